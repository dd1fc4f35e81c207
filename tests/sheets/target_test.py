"""What jobbook refuses to write, and what it leaves as it was. Each refusal: exit 2, its own sentence, nothing behind."""

import fcntl
import os
import shutil
import socket
import subprocess

import pytest

from calls import BUILD, done, fields, give, jobbook
from jobbook_test import SMALL


@pytest.fixture(scope="module")
def made(tmp_path_factory):
    folder = tmp_path_factory.mktemp("made")
    done("make", give(folder / "notes", **SMALL), folder / "job.ods")
    return folder


@pytest.fixture
def here(made, tmp_path):
    shutil.copy(made / "job.ods", tmp_path / "job.ods")
    shutil.copytree(made / "notes", tmp_path / "notes")
    return tmp_path


def snapshot(folder):
    return {path: path.read_bytes() if path.is_file() else None for path in sorted(folder.rglob("*"))}


def refused(folder, *words, says, env=None):
    """Exit 2 with these words; every file of the folder is as it was, no file is new."""
    before = snapshot(folder)
    ran = subprocess.run([str(BUILD / "jobbook"), *map(str, words)], capture_output=True, text=True, cwd=folder,
                         timeout=300, env={**os.environ, **(env or {})})
    assert ran.returncode == 2, ran.stdout + ran.stderr
    for part in [says] if isinstance(says, str) else says:
        assert part in ran.stderr, ran.stderr
    assert "Nothing was written." in ran.stderr
    assert snapshot(folder) == before
    return ran.stderr


def test_a_command_never_writes_over_what_it_reads(here):
    (here / "link.ods").symlink_to("job.ods")
    os.link(here / "job.ods", here / "twin.ods")
    (here / "sub").mkdir()
    for target in ("job.ods", "./sub/../job.ods", here / "job.ods", "link.ods", "twin.ods"):
        for word in ([], ["--replace"]):
            refused(here, "again", "job.ods", target, *word, says="are the same file")
    refused(here, "again", "link.ods", "job.ods", "--replace", says="are the same file")
    refused(here, "option", "job.ods", "twin.ods", says="are the same file")
    refused(here, "prices", "job.ods", "job.ods", "--take", says="are the same file")


def test_values_never_take_the_place_of_site_notes(here):
    refused(here, "make", "notes", "new.ods", "--values", "notes", says="holds the site notes")
    refused(here, "make", "notes", "new.ods", "--paper", "notes/../notes", says="holds the site notes")
    refused(here, "values", "job.ods", "notes", says="as site notes do")
    done("values", "job.ods", "values", cwd=here)
    done("values", "job.ods", "values", cwd=here)  # values of the same sheets do


def test_a_workbook_is_replaced_only_with_a_word(here):
    refused(here, "make", "notes", "job.ods", says="job.ods is there already; --replace")
    refused(here, "again", here / "job.ods", "job.ods", says="same file")
    (here / "empty.ods").touch()
    refused(here, "again", "job.ods", "empty.ods", says="empty.ods is there already; --replace")
    done("again", "job.ods", "empty.ods", "--replace", cwd=here)
    assert (here / "empty.ods").stat().st_size > 10000
    assert not list(here.glob(".*"))


def test_a_link_is_followed(here):
    (here / "sub").mkdir()
    (here / "link.ods").symlink_to("sub/next.ods")
    done("again", "job.ods", "link.ods", cwd=here)
    assert (here / "link.ods").is_symlink() and (here / "sub/next.ods").stat().st_size > 10000
    (here / "sub/next.ods").chmod(0o640)
    (here / "round.ods").symlink_to("again.ods")
    (here / "again.ods").symlink_to("round.ods")
    refused(here, "again", "job.ods", "round.ods", says="is a link that leads nowhere")
    done("fill", give(here / "more", rules="Key,Value\ncover.lawn,14\n"), "link.ods", cwd=here)
    assert (here / "link.ods").is_symlink() and (here / "sub/next.ods").stat().st_mode & 0o777 == 0o640
    assert not [path for path in here.rglob(".*")]


@pytest.mark.parametrize("prepare, words, says", [
    (lambda at: (at / "job.ods").chmod(0o444), ["fill", "notes", "job.ods"], "job.ods is read-only"),
    (lambda at: (at / "job.ods").chmod(0o444), ["make", "notes", "job.ods", "--replace"], "job.ods is read-only"),
    (lambda at: (at / "d.ods").mkdir(), ["make", "notes", "d.ods", "--replace"], "d.ods is a folder, not a workbook"),
    (lambda at: (at / "d.ods").mkdir(), ["values", "d.ods", "v"], "d.ods is a folder, not a workbook"),
    (lambda at: os.mkfifo(at / "p.ods"), ["make", "notes", "p.ods", "--replace"], "p.ods is not a file"),
    (lambda at: (at / "none.ods").touch(), ["order", "none.ods", "--number", "1"], "none.ods is empty: it holds no workbook"),
    (lambda at: (at / "none.ods").touch(), ["again", "none.ods", "new.ods"], "none.ods is empty: it holds no workbook"),
    (lambda at: (at / "none.ods").touch(), ["paper", "none.ods", "p"], "none.ods is empty: it holds no workbook"),
    (lambda at: None, ["make", "notes", "x" * 250 + ".ods"], "is too long; 247 is the most"),
    (lambda at: None, ["values", "job.ods", "v" * 300], "is too long"),
    (lambda at: None, ["make", "notes", "nowhere/new.ods"], "there is no folder nowhere"),
    (lambda at: None, ["values", "gone.ods", "v"], "there is no file gone.ods"),
    (lambda at: None, ["option", "job.ods", "gone.ods"], "there is no file gone.ods"),
    (lambda at: None, ["values", "job.ods", "job.ods"], "job.ods is a file, not a folder"),
    (lambda at: None, ["paper", "job.ods", "job.ods/p"], "job.ods is a file, not a folder"),
    (lambda at: (at / "shut").mkdir(mode=0o555), ["again", "job.ods", "shut/new.ods"], "the folder shut: it is read-only"),
    (lambda at: (at / "shut").mkdir(mode=0o555), ["values", "job.ods", "shut"], "the folder shut: it is read-only"),
])
def test_each_refusal_has_its_sentence(here, prepare, words, says):
    prepare(here)
    if (here / "p.ods").exists():
        before = sorted(here.iterdir())
        ran = jobbook(*words, cwd=here)
        assert ran.returncode == 2 and says in ran.stderr and sorted(here.iterdir()) == before
    else:
        refused(here, *words, says=says)


def test_where_temporary_files_go(here):
    refused(here, "again", "job.ods", "new.ods", says=["/no/such (TMPDIR)", "which is not there"], env={"TMPDIR": "/no/such"})
    # A folder of the system itself: it has no room for files.
    refused(here, "again", "job.ods", "new.ods", says=["/proc (TMPDIR)", "0 MB are free"], env={"TMPDIR": "/proc"})
    refused(here, "values", "job.ods", "v", says=["/proc (TMPDIR)", "0 MB are free"], env={"TMPDIR": "/proc"})


LOCK = ".~lock.job.ods#"


def test_an_office_that_has_it_open_is_named(here):
    (here / LOCK).write_text(f"R. Hollowell,rh,{socket.gethostname()},26.11.2026 08:15,file:///home/rh/office/4;")
    for words in (["fill", "notes", "job.ods"], ["order", "job.ods", "--number", "7"], ["make", "notes", "job.ods", "--replace"]):
        refused(here, *words, says=["job.ods is open in an office: R. Hollowell on", "since 26.11.2026 08:15", LOCK])
    # Reading needs no lock, and leaves that of the other alone.
    done("again", "job.ods", "new.ods", cwd=here)
    assert (here / LOCK).read_text().startswith("R. Hollowell")


def test_a_real_office_and_jobbook_respect_each_other(here):
    from office import Office

    with Office(BUILD / "extension") as office:
        document = office.desktop.loadComponentFromURL((here / "job.ods").as_uri(), "_blank", 0, ())
        assert (here / LOCK).exists()
        refused(here, "fill", "notes", "job.ods", says="job.ods is open in an office")
        document.close(True)
    assert not (here / LOCK).exists()


def test_locks_that_a_jobbook_left_behind_are_removed(here):
    host = socket.gethostname()
    for stale in (f"jobbook,me,{host},26.11.2026 08:15,;",  # nobody holds it
                  f",me,{host},26.11.2026 08:15,file:///tmp/trenchbook-Gone42;",  # its office is gone
                  ""):
        (here / LOCK).write_text(stale)
        done("fill", give(here / "more", rules="Key,Value\ncover.lawn,14\n"), "job.ods", cwd=here)
        assert not (here / LOCK).exists(), stale
    (here / LOCK).write_text("jobbook,me,another-machine,26.11.2026 08:15,;")
    refused(here, "fill", "more", "job.ods", says="on another-machine")


def test_the_second_of_two_waits(here):
    """The lock is held as a jobbook at work holds it; when it goes, the one that waited does its work."""
    with open(here / LOCK, "w") as lock:
        lock.write(f"jobbook,me,{socket.gethostname()},26.11.2026 08:15,;")
        lock.flush()
        fcntl.flock(lock, fcntl.LOCK_EX)
        waiting = subprocess.Popen([str(BUILD / "jobbook"), "fill", give(here / "more", rules="Key,Value\ncover.lawn,14\n"), "job.ods"],
                                   cwd=here, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True)
        assert waiting.stderr.readline() == "another jobbook is at work on job.ods: waiting\n"
        (here / LOCK).unlink()
    out, error = waiting.communicate(timeout=300)
    assert waiting.returncode == 0 and not error, error


def test_two_at_once_lose_nothing(here):
    """Both changes are in the file, whichever came first."""
    notes = [give(here / "one", rules="Key,Value\ncover.lawn,14\n"), give(here / "two", sender="field,value\nOur name,Two at Once\n")]
    both = [subprocess.Popen([str(BUILD / "jobbook"), "fill", folder, "job.ods"], cwd=here, stdout=subprocess.PIPE,
                             stderr=subprocess.PIPE, text=True) for folder in notes]
    for one in both:
        out, error = one.communicate(timeout=300)
        assert one.returncode == 0, error
    done("values", "job.ods", "values", cwd=here)
    assert "cover.lawn,14," in (here / "values/rules.csv").read_text()
    assert "Two at Once" in fields(here / "values/sender.csv").values()
    assert not list(here.glob(".*"))
