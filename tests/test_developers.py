"""Every YAML block of DEVELOPERS.md is a file of the knowledge that loads and does what it says."""

from __future__ import annotations

import re
import shutil
from pathlib import Path

from diagnose.audit.examples import run_examples
from diagnose.book.loader import load_book
from diagnose.book.locate import knowledge_folder

GUIDE = Path(__file__).parents[1] / "DEVELOPERS.md"
BLOCK = re.compile(r"```yaml\n# (\S+)\n(.*?)```", re.DOTALL)


def test_every_yaml_block_loads_beside_the_shipped_knowledge(tmp_path: Path) -> None:
    text = GUIDE.read_text(encoding="utf-8")
    blocks = BLOCK.findall(text)
    assert len(blocks) == text.count("```yaml")
    folder = tmp_path / "knowledge"
    shutil.copytree(knowledge_folder(), folder)
    before = load_book(folder)
    for name, body in blocks:
        (folder / name).write_text(body, encoding="utf-8")
    book = load_book(folder)
    assert set(book.causes) - set(before.causes) == {"loose-splash-guard"}
    assert set(book.stops) - set(before.stops) == {"dresser-left-on-the-chuck"}
    failures = [str(f) for f in run_examples(book) if f.cause == "loose-splash-guard"]
    assert failures == []
