from .server import Asked as Asked
from .server import serve as serve

__all__ = ["Asked", "serve"]
