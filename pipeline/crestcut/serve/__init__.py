"""None

What other rooms may use is named in ``__init__.pyi``; it is loaded when first asked for."""

import lazy_loader

__getattr__, __dir__, __all__ = lazy_loader.attach_stub(__name__, __file__)
