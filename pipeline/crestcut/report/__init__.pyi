from .exchange.cad import CAD_NAME as CAD_NAME
from .exchange.cad import write_cad as write_cad
from .exchange.classified import write_classified as write_classified
from .exchange.mesh import GLB_NAME as GLB_NAME
from .exchange.mesh import PLY_NAME as PLY_NAME
from .exchange.mesh import write_depth_glb as write_depth_glb
from .exchange.mesh import write_depth_ply as write_depth_ply
from .exchange.survey import write_survey as write_survey
from .folder.files import Staging as Staging
from .folder.files import switched as switched
from .folder.files import whole as whole
from .folder.place import alone_in as alone_in
from .folder.place import refuse_unwritable as refuse_unwritable
from .look import health_lines as health_lines
from .look import look_record as look_record
from .look import write_look as write_look
from .pages.jobs import JobRow as JobRow
from .pages.jobs import job_row as job_row
from .pages.jobs import write_jobs as write_jobs
from .pages.report import first_answer as first_answer
from .pages.report import write_report as write_report
from .pictures.floor_plan import draw_floor_plan as draw_floor_plan
from .pictures.plan import draw_plan as draw_plan
from .pictures.profile import draw_profile as draw_profile
from .pictures.reference import REFERENCE_NAME as REFERENCE_NAME
from .pictures.reference import draw_reference as draw_reference
from .pictures.reference import worth_drawing as worth_drawing
from .pictures.vehicle_drawing import draw_vehicle as draw_vehicle
from .pictures.verify_plan import draw_checked as draw_checked
from .plots.sheets import write_plots as write_plots
from .sheets.agreement import write_agreement as write_agreement
from .sheets.all_sheets import write_sheets as write_sheets
from .sheets.floor import write_floor_sheets as write_floor_sheets
from .sheets.vehicle import write_measuring_sheet as write_measuring_sheet
from .sheets.verify import write_hand_over as write_hand_over
from .view.floor_report import FloorReport as FloorReport
from .view.floor_result import FLOOR_NAME as FLOOR_NAME
from .view.floor_result import write_floor_json as write_floor_json
from .view.proof import PROOF_NAME as PROOF_NAME
from .view.proof import write_proof as write_proof
from .view.record import RECORD_NAME as RECORD_NAME
from .view.record import RECORD_SCHEMA as RECORD_SCHEMA
from .view.record import versions as versions
from .view.record import write_record as write_record
from .view.result import write_result as write_result
from .view.verify_report import report_now as report_now
from .view.verify_result import write_verify as write_verify
from .words.floor import floor_lines as floor_lines
from .words.look_how import how_text as how_text
from .words.look_seen import told as told
from .words.summary import summary_lines as summary_lines
from .words.vehicle import vehicle_lines as vehicle_lines
from .words.verdict import verdict_line as verdict_line
from .words.verify import verify_lines as verify_lines

__all__ = [
    "CAD_NAME",
    "FLOOR_NAME",
    "GLB_NAME",
    "PLY_NAME",
    "PROOF_NAME",
    "RECORD_NAME",
    "RECORD_SCHEMA",
    "REFERENCE_NAME",
    "FloorReport",
    "JobRow",
    "Staging",
    "alone_in",
    "draw_checked",
    "draw_floor_plan",
    "draw_plan",
    "draw_profile",
    "draw_reference",
    "draw_vehicle",
    "first_answer",
    "floor_lines",
    "health_lines",
    "how_text",
    "job_row",
    "look_record",
    "refuse_unwritable",
    "report_now",
    "summary_lines",
    "switched",
    "told",
    "vehicle_lines",
    "verdict_line",
    "verify_lines",
    "versions",
    "whole",
    "worth_drawing",
    "write_agreement",
    "write_cad",
    "write_classified",
    "write_depth_glb",
    "write_depth_ply",
    "write_floor_json",
    "write_floor_sheets",
    "write_hand_over",
    "write_jobs",
    "write_look",
    "write_measuring_sheet",
    "write_plots",
    "write_proof",
    "write_record",
    "write_report",
    "write_result",
    "write_sheets",
    "write_survey",
    "write_verify",
]
