"""What the build made. TRENCHBOOK_BUILD names its folder, else build/ in the checkout."""

import json
import os
from pathlib import Path

CHECKOUT = Path(__file__).resolve().parents[3]
BUILD = Path(os.environ.get("TRENCHBOOK_BUILD", CHECKOUT / "build")).resolve()


def functions():
    """The catalog, as the build describes it."""
    return json.loads((BUILD / "made" / "functions.json").read_text(encoding="utf-8"))
