"""The small knowledge made sound: what the lints rightly find in it is mended first."""

from __future__ import annotations

from pathlib import Path

from tests.small import change, copy_small

ROAD = "leads_through:\n  - {{to: {0}, because: {1}, source: common-practice}}\nfix:\n"
MENDED = (
    ("causes/wheel/unbalanced-wheel.yaml", "how_common: common", "how_common: 0.4"),
    ("causes/wheel/wheel-left-undressed.yaml", "how_common: common", "how_common: 0.25"),
    ("causes/coolant/coolant-misses-the-cut.yaml", "how_common: common", "how_common: 0.25"),
    ("causes/holding/dirt-under-part.yaml", "how_common: common", "how_common: 0.7"),
    (
        "causes/coolant/coolant-misses-the-cut.yaml",
        "fix:\n",
        ROAD.format("grains-rub", "nothing wets the grains"),
    ),
    (
        "causes/holding/dirt-under-part.yaml",
        "fix:\n",
        ROAD.format("part-stands-askew", "the chip lifts one end"),
    ),
    (
        "mechanisms.yaml",
        "- id: grains-rub\n",
        "- id: part-stands-askew\n  name: the part stands askew\n"
        "  explain: One end stands high and loses more stock than the other.\n  leads_to:\n"
        "    - {to: taper-along-travel, because: the high end is cut first,"
        " source: common-practice}\n"
        "- id: grains-rub\n",
    ),
    (
        "causes/drive/lumpy-belt.yaml",
        "leads_through:\n",
        "  - {finding: thin-stream, how_often: sometimes, because: the belt throws the coolant"
        " about, source: common-practice}\nleads_through:\n",
    ),
    (
        "causes/surroundings/shaking-floor.yaml",
        "  - {finding: comes-with-neighbours, how_often: usually, because: no shaking when that"
        " machine stands, source: common-practice}\n",
        "",
    ),
    (
        "findings/signs.yaml",
        "- id: comes-with-neighbours\n  kind: sign\n  name: the marks come and go with a machine"
        " nearby\n  without_cause: almost never\n  source: common-practice\n",
        "",
    ),
    (
        "causes/wheel/wheel-left-undressed.yaml",
        "leads_through:\n",
        "  - {finding: even-bars-across-travel, how_often: seldom, because: a dull wheel may"
        " chatter, source: common-practice}\nleads_through:\n",
    ),
)
STREAM = """\
id: stream-by-lamp
name: coolant stream under a lamp
kind: one
ask: "Wheel running, stand aside: is the stream on the cut, seen under a lamp?"
help: Hold the lamp behind the stream.
minutes: 0.5
options:
  - {id: on-it, say: all of it, means: {thin-stream: no}}
  - {id: beside, say: beside it, means: {thin-stream: yes}}
place: machine
needs: [wheel-turning]
tools: [lamp]
cautions: [stand-aside-at-start]
source: common-practice
"""


def sound(tmp_path: Path) -> Path:
    """A copy of the small knowledge in which no lint finds anything."""
    folder = copy_small(tmp_path)
    for file, old, new in MENDED:
        change(folder, file, old, new)
    path = folder / "checks" / "machine" / "stream-by-lamp.yaml"
    path.write_text(STREAM, encoding="utf-8")
    return folder
