"""The command line: parse, call, print. The only place that prints or exits."""

from __future__ import annotations

import sys

import click

from crestcut.errors import CrestcutError


class _OneLineErrors(click.Group):
    """Turns the program's own error into one line on stderr and exit code 2."""

    def invoke(self, ctx: click.Context) -> object:
        try:
            return super().invoke(ctx)
        except CrestcutError as error:
            click.echo(f"crestcut: {error}", err=True)
            sys.exit(2)


@click.group(cls=_OneLineErrors)
@click.version_option(package_name="crestcut")
def main() -> None:
    """From a scan of a slab to a verdict on a low vehicle and a depth to remove."""
