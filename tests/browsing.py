"""A real Chromium for the pages, driven by Playwright."""

import shutil
from pathlib import Path

BROWSERS = ("chromium-headless-shell", "chromium", "chromium-browser", "google-chrome")
NO_BROWSER = (
    "no Chromium was found, so no page was opened; on Debian or Ubuntu: apt install chromium-headless-shell"
)
# Quiet and alone: no sandbox (root has none), nothing that calls home, nothing that outlives the test.
LAUNCH_ARGUMENTS = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--disable-dev-shm-usage",
)
AXE = Path(__file__).resolve().parent.parent / "web" / "node_modules" / "axe-core" / "axe.min.js"


def installed_browser() -> str | None:
    """The path of the first browser on this machine that will do; the headless shell is the fastest."""
    return next((path for path in map(shutil.which, BROWSERS) if path), None)
