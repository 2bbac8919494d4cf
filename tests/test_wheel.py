"""The wheel alone, installed elsewhere, works from another folder."""

from __future__ import annotations

import os
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]


@pytest.fixture(scope="module")
def unpacked(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The wheel built from this checkout, unpacked as pip would."""
    folder = tmp_path_factory.mktemp("wheel")
    build = "import sys; from hatchling.build import build_wheel; print(build_wheel(sys.argv[1]))"
    done = subprocess.run(
        [sys.executable, "-c", build, str(folder)],
        cwd=ROOT, capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    (wheel,) = folder.glob("*.whl")
    with zipfile.ZipFile(wheel) as archive:
        archive.extractall(folder / "site")
    return folder / "site"


def test_the_wheel_brings_its_knowledge_and_shows_the_demo(unpacked: Path, tmp_path: Path) -> None:
    run = "import sys; from diagnose.__main__ import main; sys.exit(main())"
    env = {**os.environ, "PYTHONPATH": str(unpacked), "PYTHONSAFEPATH": "1"}
    done = subprocess.run(
        [sys.executable, "-c", f"import diagnose; print(diagnose.__file__); {run}", "demo"],
        cwd=tmp_path, capture_output=True, text=True, env=env, check=False,
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    assert str(unpacked) in done.stdout
    assert "Most likely:" in done.stdout
    pages = list((tmp_path / "reports").glob("*.html"))
    assert len(pages) == 1
    assert "<html" in pages[0].read_text(encoding="utf-8")
