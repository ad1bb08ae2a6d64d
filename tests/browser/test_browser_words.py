"""What a script says in another language is what the program says, message by message."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from browser.conftest import Opener, until
from browser.courtyard import courtyard
from crestcut.base.language import catalogue, speaking, words_of
from crestcut.report.pages.pick import write_pick
from crestcut.report.pages.report import write_report
from report.deliver_scene import MADE_UP, make_report
from test_language import english_in, filled

SOURCE = Path(__file__).parents[2] / "pipeline/crestcut/report/pages/viewer/src/words.js"
CALL = "([told, texts]) => { %s\n const say = speaker(told); return texts.map(say); }"


SHOWN = """() => {
  const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT), found = [];
  for (let at; (at = walk.nextNode()); )
    if (!at.parentElement.closest("bdi, code, kbd, script, style, textarea, option")) found.push(at.data);
  return found;
}"""


def test_scripts_say_what_the_program_says(browser: Any) -> None:
    words = words_of("de", "DE")
    texts = [filled(english, seed) for seed, english in enumerate(sorted(catalogue("de")))]
    texts += [text[:1].upper() + text[1:] for text in texts]  # as a sentence begins
    texts += ["1,234.5 m", "1,234 m"]
    texts += ["Stop. Nothing. 1.5 mm", "5 ft 3 1/2 in", "a: b; c", "12.5 mm", " Stop. "]
    told = {"language": words.language, "decimal": words.decimal, "messages": words.messages}
    tab = browser.new_page()
    said = tab.evaluate(CALL % SOURCE.read_text(encoding="utf-8").replace("export ", ""), [told, texts])
    tab.close()
    differ = [(t, words.say(t), s) for t, s in zip(texts, said, strict=True) if words.say(t) != s]
    assert not differ, json.dumps(differ[:3], ensure_ascii=False)


def test_offline_pages_speak_by_the_words_they_carry(open_page: Opener, tmp_path: Path) -> None:
    """What their scripts write, before and after a touch; no request is made for it (``open_page``)."""
    with speaking(words_of("de", "DE")):
        report = write_report(make_report(clearance=0.09), tmp_path)
        pick = write_pick(courtyard(str(tmp_path / "apron.laz")), None, tmp_path)
    page = open_page(report)
    page.locator("#station").press("ArrowRight")
    page.locator("#layer").select_option("lack")
    until(page, "document.getElementById('station-words').textContent.startsWith('Vorderachse bei')")
    assert not [text for text in page.evaluate(SHOWN) if english_in(text) and text not in MADE_UP]
    page = open_page(pick)
    page.locator("#view").press("Enter")
    page.locator("#tool-mark").check(force=True)
    page.locator("#view").press("Enter")
    until(page, "document.getElementById('tap-said').textContent.startsWith('Marke A gesetzt')")
    assert not [text for text in page.evaluate(SHOWN) if english_in(text)]
