"""What a sheet shows when it is opened: headings and names that stay in sight, no gridlines, the cell where typing begins."""

import xml.etree.ElementTree as ElementTree
import zipfile

import pytest

from calls import BUILD

CONFIG = "{urn:oasis:names:tc:opendocument:xmlns:config:1.0}"
TABLE = "{urn:oasis:names:tc:opendocument:xmlns:table:1.0}"
STYLE = "{urn:oasis:names:tc:opendocument:xmlns:style:1.0}"
FROZEN = "2"
# Of a window of 1400 by 900 at 100 % and 96 dots an inch, less what the office itself takes: 360 mm by 180 mm.
WIDEST = 360 * 0.5


def views(path):
    """By sheet what settings.xml says of its view; under "" what it says of the whole."""
    root = ElementTree.fromstring(zipfile.ZipFile(path).read("settings.xml"))
    found = {}
    for entry in root.iter(CONFIG + "config-item-map-entry"):
        items = {item.get(CONFIG + "name"): item.text for item in entry.findall(CONFIG + "config-item")}
        if "CursorPositionX" in items:
            found[entry.get(CONFIG + "name")] = items
        elif "ActiveTable" in items:
            found[""] = items
    return found


def column_widths(path):
    """By sheet the widths of its columns in millimeters."""
    root = ElementTree.fromstring(zipfile.ZipFile(path).read("content.xml"))
    of_style = {}
    for style in root.iter(STYLE + "style"):
        properties = style.find(STYLE + "table-column-properties")
        if properties is not None:
            text = properties.get(STYLE + "column-width")
            of_style[style.get(STYLE + "name")] = float(text[:-2]) * {"in": 25.4, "cm": 10, "mm": 1}[text[-2:]]
    return {table.get(TABLE + "name"): [of_style[column.get(TABLE + "style-name")] for column in table.iter(TABLE + "table-column")
                                        for _ in range(min(int(column.get(TABLE + "number-columns-repeated", 1)), 100))]
            for table in root.iter(TABLE + "table")}


def rows_in_sight(path, sheet, above):
    """How many of the rows above that one are not hidden."""
    root = ElementTree.fromstring(zipfile.ZipFile(path).read("content.xml"))
    table = next(table for table in root.iter(TABLE + "table") if table.get(TABLE + "name") == sheet)
    shown = [row.get(TABLE + "visibility") is None for row in table.iter(TABLE + "table-row")
             for _ in range(min(int(row.get(TABLE + "number-rows-repeated", 1)), 100))]
    return sum(shown[:above])


@pytest.fixture(scope="module", params=["job", "price-book", "ledger"])
def template(request):
    return BUILD / "templates" / f"{request.param}.ots"


def test_no_gridlines_and_the_first_sheet_in_front(template):
    seen = views(template)
    assert seen[""]["ShowGrid"] == "false"
    assert seen[""]["ActiveTable"] == next(iter(column_widths(template)))


def test_names_and_headings_stay_in_sight(template):
    seen, widths = views(template), column_widths(template)
    frozen = {sheet for sheet, view in seen.items() if sheet and view.get("HorizontalSplitMode") == FROZEN}
    assert frozen, "at least the long tables"
    for sheet in frozen:
        held = int(seen[sheet]["HorizontalSplitPosition"])
        assert held >= 1
        assert sum(widths[sheet][:held]) <= WIDEST, f"{sheet}: the names leave room for the rest"
        assert seen[sheet]["VerticalSplitMode"] == FROZEN, sheet
        assert rows_in_sight(template, sheet, int(seen[sheet]["VerticalSplitPosition"])) <= 13, sheet


def test_every_input_table_of_the_job_holds_its_names_and_opens_at_a_cell_to_type():
    seen = views(BUILD / "templates" / "job.ots")
    for sheet in ("Levels", "Nodes", "Water", "Runs", "Ground", "Crossings", "Outlets", "Prices"):
        view = seen[sheet]
        assert view["HorizontalSplitMode"] == view["VerticalSplitMode"] == FROZEN, sheet
        assert int(view["CursorPositionY"]) > int(view["VerticalSplitPosition"]), f"{sheet}: below the headings"
    assert (seen["Job"]["CursorPositionX"], seen["Job"]["CursorPositionY"]) != ("0", "0")


def test_every_sheet_opens_at_its_top_with_the_cursor_in_sight(template):
    for sheet, view in views(template).items():
        if not sheet:
            continue
        top = int(view["VerticalSplitPosition"]) if view.get("VerticalSplitMode") == FROZEN else 0
        assert int(view["PositionBottom"]) == top, sheet
        assert int(view["CursorPositionY"]) <= 30, f"{sheet}: below what a window shows"


def test_a_made_job_keeps_the_view(demo):
    made, template = views(demo / "job.ods"), views(BUILD / "templates" / "job.ots")
    for sheet, view in template.items():
        for item in ("HorizontalSplitMode", "HorizontalSplitPosition", "VerticalSplitMode", "VerticalSplitPosition"):
            assert made[sheet].get(item) == view.get(item), (sheet, item)


def test_sheets_stand_in_groups_by_the_color_of_their_tabs_and_the_workings_are_hidden():
    root = ElementTree.fromstring(zipfile.ZipFile(BUILD / "templates" / "job.ots").read("content.xml"))
    styles = {style.get(STYLE + "name"): style.find(STYLE + "table-properties") for style in root.iter(STYLE + "style")}
    tables = [(table.get(TABLE + "name"), styles[table.get(TABLE + "style-name")]) for table in root.iter(TABLE + "table")]
    colors = [next(value for key, value in properties.items() if key.endswith("tab-color")) for _, properties in tables]
    turns = [color for place, color in enumerate(colors) if place == 0 or colors[place - 1] != color]
    assert len(turns) == len(set(turns)) == 5, "no group is torn apart"
    assert [name for name, properties in tables if properties.get(TABLE + "display") == "false"] == ["Workings"]
