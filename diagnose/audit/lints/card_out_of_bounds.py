"""A card that turns the wheel without its caution, or an experiment that dares too much."""

from __future__ import annotations

from diagnose.audit.lint import Lint

LINT = Lint(
    id="card-out-of-bounds",
    says="A card that turns the wheel without its caution, or an experiment that dares too much.",
    page=(
        "Whoever follows a card line by line is told the care before the step that needs it: a "
        "card that turns the wheel has a caution. An experiment for a lesson goes further: the "
        "guard stays shut, everyone stands aside at the start, and it says what is seen and "
        "what must never be done. Other cards have no 'see:' and 'never:'."
    ),
    file="cards/spin-it-up.yaml",
    good="",
    bad=(
        "id: spin-it-up\nname: Spin a new wheel up\nuse_when: [a wheel was mounted]\n"
        "not_when: [the wheel failed its ring test]\nneeds: [wheel-turning]\n"
        "minutes: {first_time: 10, practised: 5}\nsteps:\n"
        "  - {do: Shut the guard., why: It holds the pieces., check_by: The latch is in.,"
        " source: common-practice}\n"
        "  - {do: Start the wheel., why: It shows the shaking., check_by: It runs quietly.,"
        " source: common-practice}\n"
        "proof: It runs a minute without shaking.\nsources: [common-practice]\n"
    ),
    known_by=(
        r"this card turns the wheel and no step",
        r"no experiment is made with the guard open",
        r"nobody is told to stand aside",
        r"only an experiment has '",
    ),
)
