"""The JSON Schemas of every kind of file, written where an editor finds them."""

from __future__ import annotations

from pathlib import Path


def put_schemas(out: Path, base: Path | None = None) -> list[Path]:
    """Write every schema into the folder; their paths. Raises BookError."""
    from diagnose.book.locate import knowledge_folder
    from diagnose.book.problems import BookError
    from diagnose.book.schema import write_schemas
    from diagnose.book.shapes import Reading
    from diagnose.book.words import read_words
    from diagnose.case.fields import CASE
    from diagnose.shop.fields import HEALTHY, MACHINE, SHOP, WHEEL

    reading = Reading()
    words = read_words(base or knowledge_folder(), reading)
    if reading.problems:
        raise BookError(reading.problems)
    forms = {"case": CASE, "machine": MACHINE, "wheel": WHEEL, "shop": SHOP, "healthy": HEALTHY}
    return write_schemas(words, out, forms)
