"""Results built by hand: a rich one with everything in it, and the barest there can be."""

from __future__ import annotations

from diagnose.view.drawn import GridView, LimitView, ShakersView, ShakerView
from diagnose.view.result import (
    AidView,
    AnswerOutcome,
    ArrowView,
    CauseView,
    CautionView,
    CheckView,
    DiffersView,
    EarlierView,
    EntryView,
    FindingView,
    FixView,
    HelpedView,
    NextView,
    PartView,
    PlanView,
    ReadingView,
    ReasonView,
    ResultView,
    RuledOutView,
    SourceView,
    StabilityView,
    StopView,
)

SHOP = SourceView("common-practice", "common practice, no source", "common practice")
CODE = SourceView("ansi-b7-1", "Safety requirements for abrasive wheels, 6.1", "from memory")
BOOK = SourceView("handbook-chatter", "Grinding handbook, chapter on chatter marks", "confirmed")

RING = CautionView(
    "ring-test", "Ring-test the wheel bare and dry before it goes back on the spindle.", CODE
)
ASIDE = CautionView(
    "stand-aside", "Stand out of line with the wheel for the first minute of running.", CODE
)
GLASSES = CautionView("eyes", "Wear eye protection when you dress.", SHOP)

CRACKED = StopView(
    id="cracked-wheel",
    kind="stop",
    name="The wheel may be cracked",
    what_is_wrong="A cracked wheel can burst at speed. Nothing turns until it is proved whole.",
    do_first=(
        "Switch off and wait until the wheel stands still.",
        "Lock the power out.",
        "Take the wheel off and look all round it, both sides.",
    ),
    cleared_when="Another wheel is mounted that rings clear and shows no chip or crack.",
    because=("Ring test: it gives a dull sound", "a knocked wheel is cracked until proved whole"),
    source=CODE,
)
HOLD = StopView(
    id="cracked-work",
    kind="hold",
    name="The part shows fine cracks",
    what_is_wrong="Grinding cracks go deeper than they look.",
    do_first=("Mark the part and put it with the rejects.",),
    cleared_when="An inspector has passed it.",
    because=("Look at the face: a net of fine lines",),
    source=SHOP,
)


def _cause(name: str, place: int, **changes: object) -> CauseView:
    chances = ((0.63, 0.48, 0.71), (0.22, 0.15, 0.34), (0.06, 0.04, 0.09), (0.02, 0.01, 0.3))
    acts, alone, present = chances[place]
    parts: dict[str, object] = {
        "id": name.lower().replace(" ", "-"),
        "name": name,
        "summary": f"{name} in a sentence that a newcomer can follow.",
        "status": "tried",
        "probability": acts,
        "cures_alone": alone,
        "present": present,
        "words": ("likely", "possible", "hardly", "hardly")[place],
        "fix_minutes_first": (60.0, 35.0, 90.0, 150.0)[place],
        "fix_minutes_practised": (30.0, 15.0, 45.0, 95.0)[place],
        "reasons_for": (),
        "reasons_against": (),
        "chain": (),
        "look_alikes": (),
        "log_odds_before": -1.7,
        "log_odds_after": 0.53,
        "sources": (BOOK, SHOP),
    }
    return CauseView(**(parts | changes))  # type: ignore[arg-type]  # passed on


UNBALANCED = _cause(
    "Wheel and flange out of balance",
    0,
    summary="One heavy spot pulls the wheel up and down once in every turn.",
    reasons_for=(
        ReasonView(
            "Bars across the travel: one bar each wheel turn",
            1.92,
            ("bars-in-25mm", "table-speed"),
            (3, 4),
        ),
        ReasonView("Since when: since the wheel was changed", 0.74, ("what-changed",), (2,)),
        ReasonView("Spindle bearings: oil film", 0.21, ("bearing-kind",), (0,)),
        ReasonView("Table drive: rack and pinion", 0.03, ("table-drive",), (0,)),
    ),
    reasons_against=(
        ReasonView("Rough re-dress: gone and comes back", -0.64, ("rough-re-dress",), (6,)),
    ),
    chain=(
        ArrowView(
            "Wheel and flange out of balance",
            "The wheel lifts once a turn",
            "one heavy spot is thrown outward on each turn",
        ),
        ArrowView(
            "The wheel lifts once a turn",
            "Waves are cut in the work",
            "the depth of cut rises and falls while the table runs on",
        ),
        ArrowView(
            "Waves are cut in the work",
            "Ladder rungs, evenly spaced",
            "each wave catches the light as one bar",
        ),
    ),
    look_alikes=("Wheel not trued", "Worn spindle bearings"),
)
LUMPY = _cause(
    "Lumpy or set drive belt",
    1,
    summary="A belt that took a set shakes the spindle at its own pace.",
    reasons_for=(
        ReasonView("Sound: a slow beat", 0.55, ("what-you-hear",), (5,)),
        ReasonView("Drive: flat belt with a splice", 0.33, ("drive-kind",), (0,)),
    ),
    reasons_against=(
        ReasonView("Bars: one bar each wheel turn", -1.1, ("bars-in-25mm", "table-speed"), (3, 4)),
    ),
    chain=(
        ArrowView(
            "Lumpy or set drive belt", "The spindle is tugged", "each lump passes the pulley"
        ),
        ArrowView(
            "The spindle is tugged", "Waves are cut in the work", "the wheel follows the tug"
        ),
        ArrowView(
            "Waves are cut in the work", "Ladder rungs, evenly spaced", "each wave is one bar"
        ),
    ),
    look_alikes=("Wheel and flange out of balance",),
    log_odds_before=-2.0,
    log_odds_after=-1.27,
    sources=(SHOP,),
)
FLOOR = _cause("A neighbour shakes the floor", 2, log_odds_after=-2.75)
BEARINGS = _cause(
    "Worn spindle bearings",
    3,
    chain=(
        ArrowView("Worn spindle bearings", "The wheel wanders", "the shaft has room to move"),
        ArrowView("The wheel wanders", "Ladder rungs, evenly spaced", "it wanders in step"),
    ),
)

NEXT_CHECK = CheckView(
    id="floor-glass",
    ask="Does the floor shake while a neighbour machine runs?",
    help="Lay an indicator on the table, its tip on the stopped wheelhead.",
    minutes=3.0,
    wheel="wheel stopped",
    why="splits the floor from the wheel",
    outcomes=(
        AnswerOutcome("the needle trembles", 0.08, "A neighbour shakes the floor", 0.71),
        AnswerOutcome("the needle stands still", 0.92, "Wheel and flange out of balance", 0.68),
    ),
    no_instrument="A full glass of water on the table shows the shake too.",
    options=("the needle trembles", "the needle stands still"),
)
WALK = CheckView(
    id="belt-look",
    ask="Is there a lump or a stiff place in the belt?",
    help="Turn the pulley by hand, power locked out.",
    minutes=2.0,
    wheel="wheel stopped",
    why="",
    options=("smooth all round", "one lump", "several"),
)
NOT_ASKED = CheckView(
    id="sparks-look",
    ask="Do the sparks pulse?",
    help="Watch one long stroke.",
    minutes=0.5,
    wheel="wheel turning",
    why="could still tell something",
    outcomes=(AnswerOutcome("they pulse", 0.55, "Wheel and flange out of balance", 0.74),),
    options=("they pulse",),
)


def _fix(**changes: object) -> FixView:
    parts: dict[str, object] = {
        "id": "balance-wheel",
        "do": "Balance the wheel on its flange",
        "causes": ("Wheel and flange out of balance",),
        "cures_alone": 0.48,
        "minutes_first": 60.0,
        "minutes_practised": 30.0,
        "cautions": (RING, ASIDE),
        "steps": (
            "True the wheel first: an eccentric wheel cannot be balanced.",
            "Set the arbor on level ways and let the heavy spot come down.",
            "Move the weights until it stays wherever you leave it.",
            "Run it one minute at least, guard shut, nobody in line.",
        ),
        "proof": "The next test block shows no bars under a slanting light.",
        "tools": ("balance ways", "balance arbor", "flange key"),
        "withheld": False,
        "call_someone": "",
    }
    return FixView(**(parts | changes))  # type: ignore[arg-type]  # passed on


PLAN = PlanView(
    part=(
        PartView("save", "Leave 0.05 mm on it until the bars are gone; finish it last.", SHOP),
        PartView("measure", "Measure it cool, off the magnet.", BOOK),
    ),
    first_aid=(
        AidView(
            "Dress the wheel quickly and take half the cut",
            "an open wheel shakes less",
            "Ladder rungs, evenly spaced",
            (GLASSES,),
            False,
            SHOP,
        ),
        AidView(
            "Slow the table by a third",
            "fewer strokes a minute shake the base less",
            "A neighbour shakes the floor",
            (),
            True,
            SHOP,
        ),
    ),
    cure=(
        _fix(),
        _fix(
            id="new-belt",
            do="Fit a new belt, or turn the old one warm",
            causes=("Lumpy or set drive belt", "A neighbour shakes the floor"),
            cures_alone=0.15,
            minutes_first=35.0,
            minutes_practised=15.0,
            cautions=(),
            steps=(),
            proof="",
            tools=("belt of the right length",),
            withheld=True,
        ),
        _fix(
            id="new-bearings",
            do="Have the spindle looked at",
            causes=("Worn spindle bearings",),
            cures_alone=0.01,
            minutes_first=150.0,
            minutes_practised=95.0,
            cautions=(),
            steps=("Write down the sound and the play, and when they show.",),
            proof="The dial at the nose moves less than 2 µm.",
            tools=(),
            call_someone="the spindle shop; a plain-bearing spindle has play at rest",
        ),
    ),
    expected_minutes=52.0,
    quick_minutes=41.0,
    slow_minutes=131.0,
)


EARLIER = (
    EarlierView(
        said="Last March the same fault on this machine was: Lumpy or set drive belt.",
        title="Clamp bars, ladder rungs",
        date="2026-03-09",
        machine="north-grinder",
        wheel="white-46-h",
        cured="Lumpy or set drive belt",
        alike="answers the same: 4, answers not the same: 1",
        took="40 min",
        done="new belt, both pulleys trued",
        case="2026-03-07-clamp-bars",
    ),
)
DIFFERS = (
    DiffersView("idle shake", "1.1 mm/s", "0.4 mm/s", "2.8 times", "2026-01-12", "south-grinder"),
)


SHAKERS = ShakersView(
    "45 Hz to 49.4 Hz",
    "It fits the wheel (one turn), and only that.",
    45.0,
    49.4,
    (
        ShakerView("the wheel (one turn)", "46.5 Hz to 48.5 Hz", "3.1 mm apart", True, 46.5, 48.5),
        ShakerView("the motor (one turn)", "24.1 Hz to 25 Hz", "6.1 mm apart", False, 24.1, 25.0),
    ),
)
LIMIT_OF_BURN = LimitView(
    "margin left to burn", "0.68", "0.47", "1.13", "below one it burns", True, 0.68, 0.47, 1.13
)
GRID = GridView(
    "heights of the known block",
    "um",
    "surface plate",
    (("0", "1", "2"), ("3", "", "4"), ("5", "6", "7.5")),
    ((0.0, 1.0, 2.0), (3.0, None, 4.0), (5.0, 6.0, 7.5)),
    (("tilt along", "2.2 µm"), ("twist", "0.3 µm")),
    "7.5 um",
)


def rich_view(**changes: object) -> ResultView:
    """A result with everything in it; fields can be changed by name."""
    parts: dict[str, object] = {
        "title": "Spacer plate, ripples since the wheel was changed",
        "case": "spacer-plate.yaml",
        "complaint": (("even-bars-across-travel", "Ladder rungs, evenly spaced"),),
        "complaint_sketches": ("rungs",),
        "machine": "North grinder, 0.75 kW, belt drive",
        "wheel": "WA 46 H 8 V, 178 mm",
        "part": "Spacer plate, tool steel, 60 HRC",
        "date": "2026-03-14",
        "version": "0.1.0, 61 causes, 9f3c2a",
        "stops": (CRACKED, HOLD),
        "safe": False,
        "open_hazards": ("The magnet may be weak", "The guard may be off"),
        "headline": "Most likely: Wheel and flange out of balance (likely, 63 %).",
        "first_action": CRACKED.do_first[0],
        "earlier": EARLIER,
        "differs": DIFFERS,
        "helped": (HelpedView("Diamond worn flat", "its fix made it better, not good"),),
        "shakers": SHAKERS,
        "limits": (LIMIT_OF_BURN,),
        "grids": (GRID,),
        "causes": (UNBALANCED, LUMPY, FLOOR, BEARINGS),
        "several_together": 0.17,
        "none_of_these": 0.05,
        "also_present": (("Coolant misses the cut", 0.58),),
        "too_close": "",
        "next": NextView("ask", "splits the floor from the wheel", NEXT_CHECK),
        "walk": (NEXT_CHECK, WALK),
        "plan": PLAN,
        "findings": (
            FindingView(
                "bars-once-a-turn",
                "Bars against the wheel turn",
                "one bar each wheel turn",
                ("bars-in-25mm", "table-speed", "spindle-speed"),
                ("the spacing is the table's way in one turn of the wheel",),
                0.86,
            ),
            FindingView("wheel-changed", "Wheel changed", "since it ground well", (), (), 1.0),
        ),
        "readings": (
            ReadingView(
                "spacing", "Bar spacing", "3.1 mm", "2.9 mm", "3.4 mm",
                True, 0.0031, 0.0029, 0.0034, "length",
            ),
            ReadingView(
                "marks-rate", "Marks a second", "51 /s", "41 /s", "63 /s",
                False, 51.0, 41.0, 63.0, "frequency",
            ),
            ReadingView(
                "wheel-turn", "Wheel turns a second", "47.5 /s", "46.8 /s", "48.2 /s",
                True, 47.5, 46.8, 48.2, "frequency",
            ),
            ReadingView(
                "warm", "Part after the cut", "31 °C", "29 °C", "33 °C",
                True, 304.15, 302.15, 306.15, "temperature",
            ),
            ReadingView(
                "bow", "Bow, magnet off", "-6 µm", "-9 µm", "2 µm",
                True, -6e-6, -9e-6, 2e-6, "length",
            ),
            ReadingView("bars", "Bars in 25 mm", "8", "8", "8", True, 8.0, 8.0, 8.0, "number"),
        ),
        "notes": ("The table speed was counted by hand: mid-stroke is faster than the mean.",),
        "cautions": (GLASSES,),
        "entries": (
            EntryView(0, "drive-kind", "What drives the spindle?", "flat belt", "shop", True, 1),
            EntryView(0, "bearing-kind", "Which bearings?", "oil film", "shop", True, 1),
            EntryView(1, "marks-run", "Which way do they run?", "across", "said", True, 1),
            EntryView(
                2, "what-changed", "What changed since then?", "the wheel", "said", True, 1
            ),
            EntryView(
                3, "bars-in-25mm", "How many bars in 25 mm (1 in)?", "8", "measured", True, 1
            ),
            EntryView(
                4, "table-speed", "How fast does the table run?", "9.5 m/min", "measured", True, 1
            ),
            EntryView(5, "what-you-hear", "What do you hear?", "a slow beat", "said", False, 1),
            EntryView(
                6, "rough-re-dress", "After a re-dress?", "gone and comes back", "said", True, 2
            ),
            EntryView(
                7, "floor-shake", "Does the floor shake?", "don't know", "said", True, 2
            ),
        ),
        "not_asked": (NOT_ASKED,),
        "unknown_answers": ("floor-shake",),
        "ruled_out": (RuledOutView("Inverter noise", "the motor is started straight on line"),),
        "stability": StabilityView(
            52, 60, "Lumpy or set drive belt", True, "Is there a lump in the belt, felt by hand?"
        ),
        "set_aside": ("Sound at the reversal",),
        "sources": (BOOK, CODE, SHOP),
        "case_text": "schema: 1\ntitle: spacer plate\ncomplaint: [even-bars-across-travel]\n"
        "entries:\n- {answer: bars-in-25mm, value: '8', how: measured}\n",
    }  # fmt: skip
    return ResultView(**(parts | changes))  # type: ignore[arg-type]  # passed on


def calm_view() -> ResultView:
    """The same case with nothing to stop it: the first thing to do is a fix."""
    return rich_view(
        stops=(),
        safe=True,
        open_hazards=(),
        cautions=(),
        first_action=PLAN.cure[0].do,
        next=NextView("fix", "asking more would cost more than trying it", None, PLAN.cure[0].do),
        walk=(),
        too_close="Too close to call: Lumpy or set drive belt could as well come first.",
        stability=StabilityView(
            33, 60, "Lumpy or set drive belt", False, "Is there a lump in the belt, felt by hand?"
        ),
    )


def bare_view() -> ResultView:
    """Nothing known but the day."""
    return rich_view(
        title="",
        case="",
        complaint=(),
        complaint_sketches=(),
        machine="",
        wheel="",
        part="",
        stops=(),
        open_hazards=(),
        headline="No cause stands out yet.",
        first_action="Stop here and ask someone who can look at the machine.",
        causes=(),
        also_present=(),
        next=NextView("stuck", "no question is worth its minutes now", None),
        walk=(),
        plan=PlanView((), (), (), 0.0, 0.0, 0.0),
        findings=(),
        readings=(),
        notes=(),
        cautions=(),
        entries=(),
        not_asked=(),
        unknown_answers=(),
        ruled_out=(),
        stability=None,
        set_aside=(),
        sources=(),
        case_text="",
    )
