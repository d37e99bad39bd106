"""`quizroom bench plan`."""

import click

SETTINGS = ((20, 28, 5), (60, 28, 8), (60, 28, 15), (60, 60, 8))
"""Facts missed, days to the practical, minutes a day."""


@click.command("plan")
@click.option(
    "--learners", type=click.IntRange(1, 1000), default=24, show_default=True, help="Simulated learners."
)
@click.option("--seed", type=int, default=1, show_default=True, help="The same seed gives the same learners.")
def bench_plan(*, learners: int, seed: int) -> None:
    """Compare the return plan with the same looks massed or in fixed order, on simulated learners."""
    from quizroom.second_look.trial import Setting, compare  # noqa: PLC0415 - not before `serve` patches

    click.echo("Recalled on the day of the practical, with the same number of looks:")
    click.echo("facts  days  min/day  looks   plan  in rotation  from the top  massed  no looks")
    for facts, days, minutes in SETTINGS:
        setting = Setting(facts=facts, days=days, minutes=minutes, learners=learners, seed=seed)
        came = compare(setting)
        click.echo(
            f"{facts:5}  {days:4}  {minutes:7}  {came.looks:5.0f}  {came.plan:5.1%}  {came.in_rotation:11.1%}"
            f"  {came.from_the_top:12.1%}  {came.massed:6.1%}  {came.untouched:8.1%}"
        )
    click.echo("The learners forget by another law than the plan predicts by (Pavlik & Anderson 2005).")
    click.echo("In rotation: the list in its order, going on each day where the day before ended.")
    click.echo("From the top: the list in its order, each day anew. Massed: all on the first day.")
