"""Crestcut: from a scan of a slab to a verdict on a low vehicle and a depth to remove.

``import crestcut as cc`` gives the steps of a job as functions; what there is stands in ``__init__.pyi`` and
is loaded when first asked for.
"""

import lazy_loader

__version__ = "0.1.0"
__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
