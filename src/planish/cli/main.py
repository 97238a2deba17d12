"""The command: its group, and what becomes of every way to end.

Commands import what is slow only when they run, so that ``planish --help`` is quick.
"""

import importlib
import os
import sys
import traceback
from collections.abc import Sequence

import click

from planish import __version__
from planish.cli.errors import Asked, BadInput, ExitCode
from planish.cli.terminal import clean

#: command -> module of this package and its function, in the order of the work
COMMANDS = {
    "demo": ("demo", "demo"),
    "look": ("look", "look"),
    "read": ("read", "read"),
    "weigh": ("weigh", "weigh"),
    "density": ("density", "density"),
    "test": ("test", "test"),
    "new": ("new", "new"),
    "appraise": ("appraise", "appraise"),
    "stones": ("stones", "stones"),
    "register": ("register", "register"),
    "sales": ("sales", "sales"),
    "library": ("library", "library"),
}


class _Lazy(click.Group):
    """A group that imports a command's module when the command is asked for."""

    def list_commands(self, ctx: click.Context) -> list[str]:  # noqa: ARG002  # click calls it so
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:  # noqa: ARG002  # as above
        if cmd_name not in COMMANDS:
            return None
        module, name = COMMANDS[cmd_name]
        command = getattr(importlib.import_module(f"planish.cli.{module}"), name)
        assert isinstance(command, click.Command)  # noqa: S101  # COMMANDS is written by hand
        return command


@click.group(
    cls=_Lazy,
    invoke_without_command=True,
    context_settings={"help_option_names": ["-h", "--help"]},
)
@click.version_option(__version__, "-V", "--version", message="planish %(version)s")
@click.pass_context
def planish(context: click.Context) -> None:
    """From the marks on antique silver to an opinion of value that holds up.

    \b
    planish look teapot                      where its marks usually are
    planish read "lion passant" anchor k     what the marks say
    planish new mycase/case.toml             begin a case
    planish appraise mycase/case.toml -o report.pdf

    Exit codes: 0 done; 1 a finding that you asked to fail on; 2 input that
    cannot be used, with one line that says what, where and how to mend it.
    """  # noqa: D301  # click reads the backspace
    if context.invoked_subcommand is None:
        click.echo(context.get_help())


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command and return its exit code."""
    try:
        planish.main(arguments, prog_name="planish", standalone_mode=False)
        sys.stdout.flush()
    except BadInput as fault:
        return _end(str(fault), ExitCode.BAD_INPUT)
    except Asked as reason:
        return _end(f"planish: {reason}", ExitCode.FINDING)
    except click.ClickException as fault:
        return _end(_usage(fault), ExitCode.BAD_INPUT)
    except (click.Abort, KeyboardInterrupt):
        return _end("planish: stopped", ExitCode.STOPPED)
    except BrokenPipeError:
        # the reader went away, as in `planish look | head`: nothing is left to say to it
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return ExitCode.DONE
    except Exception:  # noqa: BLE001  # the last resort: said in full, with its own exit code
        traceback.print_exc()
        return _end(
            "planish: this is a fault of the program, not of your input; please report the "
            "lines above",
            ExitCode.OWN_FAULT,
        )
    return ExitCode.DONE


def _end(message: str, code: ExitCode) -> ExitCode:
    click.echo(message, err=True)
    return code


def _usage(fault: click.ClickException) -> str:
    """One line for a fault in the command's own arguments."""
    says = " ".join(fault.format_message().split()).rstrip(".")
    says = says[:1].lower() + says[1:]
    context = getattr(fault, "ctx", None)
    path = context.command_path if context else "planish"
    return f"planish: {clean(says)}; see '{path} --help'"
