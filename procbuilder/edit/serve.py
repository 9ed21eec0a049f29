"""A built folder behind a web server on this machine alone; recordings can be wound in it."""

import socket
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from procbuilder.model.fault import InputFault
from procbuilder.pipeline.build import finish

if TYPE_CHECKING:
    from starlette.types import ASGIApp, Message, Receive, Scope, Send

HOST = "127.0.0.1"


class NotBuilt(InputFault):
    """A folder without a page."""

    def __init__(self, folder: Path) -> None:
        super().__init__(folder=folder)


class PortTaken(InputFault):
    """A port on which something else listens."""

    def __init__(self, port: int) -> None:
        super().__init__(port=port, other=port + 1)


def output_of(folder: Path) -> Path:
    """The folder with the page: the given one, or its ``out``. What a killed build left there is made whole first.

    Raises:
        NotBuilt: neither has a page.
    """
    for candidate in (folder, folder / "out"):
        finish(candidate)
        if (candidate / "index.html").is_file():
            return candidate
    raise NotBuilt(folder)


class _Ranges:
    """A range of bytes that cannot be read is answered as one that the file does not have (RFC 9110, 15.5.17)."""

    def __init__(self, app: "ASGIApp") -> None:
        self.app = app

    async def __call__(self, scope: "Scope", receive: "Receive", send: "Send") -> None:
        asked = any(name == b"range" for name, _ in scope.get("headers", ()))

        async def sent(message: "Message") -> None:
            await send({**message, "status": 416} if asked and message.get("status") == 400 else message)

        await self.app(scope, receive, sent)


def serve(folder: Path, port: int, ready: Callable[[str], object]) -> None:
    """Serve until interrupted; ``ready`` is told the address as soon as a browser can open it.

    Raises:
        NotBuilt, PortTaken: see there.
    """
    import uvicorn
    from starlette.applications import Starlette
    from starlette.middleware import Middleware
    from starlette.middleware.trustedhost import TrustedHostMiddleware
    from starlette.routing import Mount
    from starlette.staticfiles import StaticFiles

    files = StaticFiles(directory=output_of(folder), html=True)
    guard = Middleware(TrustedHostMiddleware, allowed_hosts=[HOST, "localhost"])
    with socket.socket() as listener:
        listener.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        try:
            listener.bind((HOST, port))
            listener.listen()
        except OSError:
            raise PortTaken(port) from None
        ready(f"http://{HOST}:{port}/")
        app = Starlette(routes=[Mount("/", files)], middleware=[guard, Middleware(_Ranges)])
        config = uvicorn.Config(app, log_level="warning", timeout_graceful_shutdown=1)
        uvicorn.Server(config).run(sockets=[listener])
