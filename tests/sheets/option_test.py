"""jobbook option: another way to do the job, in a file of its own, beside this one on Quote."""

import datetime
import shutil

import pytest

from calls import CHECKOUT, DEMO, done, fields, jobbook, rows
from money_book import edited

LOT = CHECKOUT / "sheets" / "demo" / "clay-lot"


@pytest.fixture(scope="module")
def files(tmp_path_factory):
    """The clay lot with its pipe in the swale; and with a rock pit at its end."""
    folder = tmp_path_factory.mktemp("option")
    notes = shutil.copytree(LOT, folder / "notes")
    for name in ("prices", "sender"):
        shutil.copy(DEMO / f"{name}.csv", notes)
    done("make", notes, folder / "swale.ods", "--values", folder / "swale")
    for path in (LOT / "pit-tried").glob("*.csv"):
        shutil.copy(path, notes)
    done("make", notes, folder / "pit.ods", "--values", folder / "pit")
    # The same way with the machine a day longer.
    longer = shutil.copytree(LOT, folder / "longer-notes")
    for name in ("prices", "sender"):
        shutil.copy(DEMO / f"{name}.csv", longer)
    with open(longer / "additions.csv", "a", encoding="utf-8") as file:
        file.write("EXCAVATOR,1,a day longer\n")
    done("make", longer, folder / "longer.ods", "--values", folder / "longer")
    return folder


def price(folder):
    return float(fields(folder / "price.csv")["Price"])


@pytest.mark.dated
def test_its_price_stands_beside_this_one(files, tmp_path):
    path = shutil.copy(files / "swale.ods", tmp_path / "job.ods")
    days = [datetime.date.today()]
    refused = jobbook("option", path, files / "pit.ods", "--name", "rock pit at the end")
    assert refused.returncode == 2 and "has no price to compare with" in refused.stderr, "its pit has a NO"
    said = done("option", path, files / "longer.ods", "--name", "a day longer")
    days.append(datetime.date.today())  # midnight may have passed
    done("values", path, tmp_path / "values")
    here, there = price(files / "swale"), price(files / "longer")
    assert there > here, "the machine costs"
    row, = rows(tmp_path / "values/options.csv")
    assert (row["Option"], row["File"]) == ("a day longer", "longer.ods") and row["On"] in map(str, days)
    assert float(row["Its price"]) == pytest.approx(there, abs=0.001)
    assert float(row["Against this one"]) == pytest.approx(there - here, abs=0.001)
    assert f"{there:,.2f}, {there - here:,.2f} more than this job" in said, said
    assert price(tmp_path / "values") == pytest.approx(here, abs=0.001), "this job's own price is untouched"

    # A snapshot: the other file may change or go; asked again, its row is renewed.
    done("option", path, files / "swale.ods")
    done("option", path, files / "longer.ods")
    done("values", path, tmp_path / "values")
    both = {row["File"]: row for row in rows(tmp_path / "values/options.csv")}
    assert list(both) == ["longer.ods", "swale.ods"] and len(rows(tmp_path / "values/options.csv")) == 2
    assert float(both["swale.ods"]["Against this one"]) == 0
    assert both["longer.ods"]["Option"] == "Clay lot above the creek (invented demo)"


def test_a_file_without_a_price_is_refused(files, tmp_path):
    path = shutil.copy(files / "swale.ods", tmp_path / "job.ods")
    done("again", files / "swale.ods", tmp_path / "empty.ods")
    before = path.read_bytes()
    ran = jobbook("option", path, tmp_path / "empty.ods")
    assert ran.returncode == 2 and "no price to compare with" in ran.stderr, ran.stdout + ran.stderr
    assert path.read_bytes() == before


def test_a_list_of_ways_by_one_command_each_a_whole_job(files, tmp_path):
    path = shutil.copy(files / "swale.ods", tmp_path / "job.ods")
    notes = shutil.copytree(LOT, tmp_path / "notes")
    for name in ("prices", "sender"):
        shutil.copy(DEMO / f"{name}.csv", notes)
    additions = (notes / "additions.csv").read_text(encoding="utf-8")
    for way, days in (("machine-longer", 1), ("machine-two-longer", 2)):
        (tmp_path / "ways" / way).mkdir(parents=True)
        (tmp_path / "ways" / way / "additions.csv").write_text(additions + f"EXCAVATOR,{days},longer\n", encoding="utf-8")
    done("options", notes, path, tmp_path / "ways")
    done("values", path, tmp_path / "values")
    told = {row["File"]: row for row in rows(tmp_path / "values/options.csv")}
    assert list(told) == ["machine-longer.ods", "machine-two-longer.ods"]
    here = price(files / "swale")
    for file, row in told.items():
        done("values", tmp_path / file, tmp_path / "of" / file)
        assert float(row["Its price"]) == pytest.approx(price(tmp_path / "of" / file), abs=1e-9), "to the cent"
        assert float(row["Against this one"]) == pytest.approx(float(row["Its price"]) - here, abs=1e-9)
        assert "stale: this job cost" not in row["Check"]
    # This job moves: what was noted says that it is stale.
    with edited(path) as book:
        book.set("Quote", "Equipment hire", 77)
    done("values", path, tmp_path / "moved")
    assert all(row["Check"].startswith(f"CHECK: stale: this job cost {here:,.2f} then") for row in rows(tmp_path / "moved/options.csv"))
    refused = jobbook("options", notes, path, tmp_path / "nowhere")
    assert refused.returncode == 2 and "is no folder" in refused.stderr


COSTS = {"Labor": ["Labor"], "Equipment": ["Equipment", "Disposal"], "Materials": ["Materials", "Sales tax on purchases", "Delivery"],
         "Subcontract": ["Permits", "Subcontract"]}


def test_a_change_is_worked_out_from_the_changed_jobs_file(files, tmp_path):
    """The same lot with 5 ft more of its last pipe: both jobs are solved, what differs is the change order."""
    path = shutil.copy(files / "swale.ods", tmp_path / "job.ods")
    notes = shutil.copytree(LOT, tmp_path / "changed-notes")
    for name in ("prices", "sender"):
        shutil.copy(DEMO / f"{name}.csv", notes)
    lines = (notes / "runs.csv").read_text(encoding="utf-8").splitlines()
    place = lines[0].split(",").index("Length")
    last = lines[-1].split(",")
    last[place] = str(float(last[place]) + 5)
    (notes / "runs.csv").write_text("\n".join([*lines[:-1], ",".join(last)]) + "\n", encoding="utf-8")
    done("make", notes, tmp_path / "longer line.ods", "--values", tmp_path / "changed")
    said = done("change", path, tmp_path / "longer line.ods", "--what", "5 ft farther")
    done("values", path, tmp_path / "values")
    row, = rows(tmp_path / "values/changes.csv")
    before, after = (fields(folder / "direct-cost.csv") for folder in (files / "swale", tmp_path / "changed"))
    for kind, labels in COSTS.items():
        more = sum(float(after[label] or 0) - float(before[label] or 0) for label in labels)
        assert float(row[kind] or 0) == pytest.approx(more, abs=0.005), kind
    cost = sum(float(row[kind] or 0) for kind in COSTS)
    assert cost == pytest.approx(float(after["Direct cost"]) - float(before["Direct cost"]), abs=0.005) and cost > 0
    assert float(row["Pipe"]) == 5 and row["Signed"] == "no"
    deepest = max(float(run[cut]) for run in rows(tmp_path / "changed/runs.csv") for cut in ("Cut up", "Cut down") if run[cut])
    assert float(row["Deepest cut"]) == pytest.approx(deepest, abs=0.006)
    marked = sum(round(float(row[kind] or 0) * (1 + share), 10) for kind, share in (("Labor", 0.15), ("Equipment", 0.1), ("Materials", 0.1), ("Subcontract", 0.05)))
    assert float(row["Amount"]) == pytest.approx(marked, abs=0.006)
    assert "5 ft farther: pipe +5.0 ft, deepest cut " in said and f"${float(row['Amount']):,.2f}, to be signed" in said, said

    # Not signed it stands apart and is renewed; signed it stays.
    done("change", path, tmp_path / "longer line.ods", "--what", "5 ft farther")
    with edited(path) as book:
        assert [line["What"] for line in book.rows("Changes") if line["What"]] == ["5 ft farther"]
        sums = book.fields("Account sums")
        assert sums["Changes signed"] == 0 and sums["Changes not signed yet"] == pytest.approx(float(row["Amount"]), abs=0.005)
        book.fill("Changes", [{"Signed": "yes"}])
        book.calculate()
        assert book.fields("Account sums")["Pipe by changes signed"] == 5
    for arguments, says in (((tmp_path / "longer line.ods", "--what", "5 ft farther"), "is signed already"),
                            ((files / "swale.ods", "--what", "nothing"), "nothing is changed"),
                            ((files / "pit.ods",), "has no price to compare with")):
        ran = jobbook("change", path, *arguments)
        assert ran.returncode == 2 and says in ran.stderr, ran.stderr
