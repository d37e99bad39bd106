"""What a page does that nobody sees: its console, its errors, its requests, the frames it gets."""

import json
import re
from dataclasses import dataclass, field
from typing import Any

from playwright.sync_api import ConsoleMessage, Page, Request, WebSocket

# Runs before the page's own scripts: keeps every text of the live region, and tells what the policy blocked.
LISTENER = """
window.heard = [];
document.addEventListener("securitypolicyviolation", (event) =>
  console.error(`blocked by the page's policy: ${event.blockedURI} (${event.violatedDirective})`));
new MutationObserver(() => {
  for (const region of document.querySelectorAll("[aria-live]")) {
    const text = region.textContent.trim();
    if (text && window.heard.at(-1) !== text) window.heard.push(text);
  }
}).observe(document, { subtree: true, childList: true, characterData: true });
"""
EVENT = re.compile(r"4[23]\d*(\[.*)", re.DOTALL)
"""A Socket.IO packet over Engine.IO: an event (42) or an acknowledgement (43 and its number)."""
NETWORK = re.compile(r"net::ERR_|WebSocket connection to|Failed to load resource")


@dataclass
class Watch:
    """Watches one page from its first request on. `complaints` must stay empty."""

    page: Page
    origin: str
    complaints: list[str] = field(default_factory=list)
    packets: list[Any] = field(default_factory=list)
    frames: list[str] = field(default_factory=list)
    outage: bool = False
    """While the server or the network is gone, the browser may say so in its console."""

    def begin(self) -> None:
        """Listen to everything."""
        self.page.add_init_script(LISTENER)
        self.page.on("console", self._hear_console)
        self.page.on("pageerror", lambda error: self.complaints.append(f"uncaught: {error}"))
        self.page.on("request", self._see_request)
        self.page.on("websocket", self._hear_socket)

    def view(self, name: str) -> dict[str, Any]:
        """The newest view of this kind that came over the wire, by itself or in a reply."""
        views = [view for packet in self.packets if (view := view_in(packet, name))]
        assert views, f"no {name} view has come yet"
        return max(views, key=lambda view: int(view["version"]))

    def heard(self) -> list[str]:
        """Every text that the live region has held since the page was loaded."""
        texts: list[str] = self.page.evaluate("window.heard")
        return texts

    def _hear_console(self, message: ConsoleMessage) -> None:
        expected = self.outage and NETWORK.search(message.text)
        if message.type in ("error", "warning") and not expected:
            self.complaints.append(f"console {message.type}: {message.text}")

    def _see_request(self, request: Request) -> None:
        allowed = (self.origin, self.origin.replace("http", "ws", 1), "data:", "blob:")
        if not request.url.startswith(allowed):
            self.complaints.append(f"request to another origin: {request.url}")

    def _hear_socket(self, socket: WebSocket) -> None:
        socket.on("framereceived", self._keep_frame)

    def _keep_frame(self, frame: str | bytes) -> None:
        text = frame if isinstance(frame, str) else frame.decode()
        self.frames.append(text)
        packet = EVENT.fullmatch(text)
        if packet:
            self.packets.append(json.loads(packet[1]))


def view_in(packet: list[Any], name: str) -> dict[str, Any] | None:
    """The view in a packet: the event `name` itself, or a reply that carries it."""
    if packet[0] == name:
        found: dict[str, Any] = packet[1]
        return found
    if isinstance(packet[0], dict):
        return packet[0].get(name)
    return None
