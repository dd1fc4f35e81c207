// Workbooks read from their file without an office: what is typed, what is worked out, where the parts stand.
#include "jobbook/stored_book.h"

#include <gtest/gtest.h>
#include <zlib.h>

#include <fstream>

#include "jobbook/packed.h"
#include "jobbook/refused.h"

namespace trenchbook::sheets {
namespace {

namespace fs = std::filesystem;

std::string little(std::uint64_t value, int size) {
    std::string bytes;
    for (int b = 0; b < size; ++b) bytes += static_cast<char>(value >> (8 * b) & 0xff);
    return bytes;
}

std::string deflated(const std::string& bytes) {
    std::string packed(compressBound(static_cast<uLong>(bytes.size())) + 64, '\0');
    z_stream stream{};
    deflateInit2(&stream, Z_BEST_SPEED, Z_DEFLATED, -MAX_WBITS, 8, Z_DEFAULT_STRATEGY);
    stream.next_in = reinterpret_cast<Bytef*>(const_cast<char*>(bytes.data()));
    stream.avail_in = static_cast<uInt>(bytes.size());
    stream.next_out = reinterpret_cast<Bytef*>(packed.data());
    stream.avail_out = static_cast<uInt>(packed.size());
    deflate(&stream, Z_FINISH);
    packed.resize(stream.total_out);
    deflateEnd(&stream);
    return packed;
}

// A packed file with one file in it, as APPNOTE.TXT lays it out.
std::string packedWith(const std::string& name, const std::string& bytes, bool deflate, int flags = 0) {
    const std::string data = deflate ? deflated(bytes) : bytes;
    const std::string about =
        little(20, 2) + little(flags, 2) + little(deflate ? 8 : 0, 2) + little(0, 4) +
        little(crc32(0, reinterpret_cast<const Bytef*>(bytes.data()), static_cast<uInt>(bytes.size())), 4) +
        little(data.size(), 4) + little(bytes.size(), 4) + little(name.size(), 2) + little(0, 2);
    const std::string file = "PK\3\4" + about + name + data;
    const std::string list = "PK\1\2" + little(20, 2) + about + little(0, 2) + little(0, 2) + little(0, 2) +
                             little(0, 4) + little(0, 4) + name;
    return file + list + "PK\5\6" + little(0, 2) + little(0, 2) + little(1, 2) + little(1, 2) +
           little(list.size(), 4) + little(file.size(), 4) + little(0, 2);
}

class StoredBook : public testing::Test {
  protected:
    fs::path write(const std::string& bytes, const std::string& name = "job.ods") const {
        const fs::path file = folder_ / name;
        std::ofstream(file, std::ios::binary) << bytes;
        return file;
    }
    fs::path writeContent(const std::string& spreadsheet) const {
        return write(packedWith("content.xml",
                                "<?xml version=\"1.0\" encoding=\"UTF-8\"?><office:document-content "
                                "xmlns:office=\"urn:oasis:names:tc:opendocument:xmlns:office:1.0\" "
                                "xmlns:table=\"urn:oasis:names:tc:opendocument:xmlns:table:1.0\" "
                                "xmlns:text=\"urn:oasis:names:tc:opendocument:xmlns:text:1.0\" "
                                "xmlns:draw=\"urn:oasis:names:tc:opendocument:xmlns:drawing:1.0\">"
                                "<office:body><office:spreadsheet>" +
                                    spreadsheet +
                                    "</office:spreadsheet></office:body></office:document-content>",
                                true));
    }
    // The cells of a sheet with one row.
    Book withRow(const std::string& cells) const {
        const auto book = storedBook(writeContent("<table:table table:name=\"Job\"><table:table-row>" +
                                                  cells + "</table:table-row></table:table>"),
                                     {"Job"});
        return book.value_or(Book());
    }
    ~StoredBook() override { fs::remove_all(folder_); }

  private:
    static fs::path newFolder() {
        std::string pattern = (fs::temp_directory_path() / "stored-book-XXXXXX").string();
        return mkdtemp(pattern.data());
    }
    fs::path folder_ = newFolder();
};

TEST_F(StoredBook, CellsAreWhatWasTyped) {
    const Book book = withRow(
        "<table:table-cell office:value-type=\"float\" office:value=\"-1.25e2\"><text:p>-125</text:p></table:table-cell>"
        "<table:table-cell office:value-type=\"percentage\" office:value=\"0.15\"/>"
        "<table:table-cell office:value-type=\"string\"><text:p>two<text:s text:c=\"2\"/>words &amp; "
        "<text:span>more</text:span></text:p><text:p>below</text:p></table:table-cell>"
        "<table:table-cell office:value-type=\"boolean\" office:boolean-value=\"true\"/>"
        "<table:table-cell office:value-type=\"date\" office:date-value=\"2026-05-31\"/>"
        "<table:table-cell office:value-type=\"date\" office:date-value=\"1900-01-01T12:00:00\"/>"
        "<table:table-cell office:value-type=\"time\" office:time-value=\"PT06H30M00S\"/>");
    const std::vector<Value> cells = {-125.0, 0.15,    std::string("two  words & more\nbelow"), 1.0, 46173.0,
                                      2.5,    6.5 / 24};
    ASSERT_EQ(book.sheets.size(), 1u);
    EXPECT_EQ(book.sheets[0].cells, cells);
    EXPECT_EQ(book.sheets[0].formulas, std::vector<bool>(7, false));
}

TEST_F(StoredBook, FormulasAreKnownAndErrorsAreTheirCode) {
    const Book book = withRow(
        "<table:table-cell table:formula=\"of:=1+1\" office:value-type=\"float\" office:value=\"2\"/>"
        "<table:table-cell table:formula=\"of:=&quot;&quot;\" office:value-type=\"string\" office:string-value=\"\"/>"
        "<table:table-cell table:formula=\"of:=NA()\" office:value-type=\"string\" office:string-value=\"\">"
        "<text:p>#N/A</text:p></table:table-cell>"
        "<table:table-cell office:value-type=\"string\" office:string-value=\"said\"><text:p>shown</text:p></table:table-cell>");
    const std::vector<Value> cells = {2.0, Value(), std::string("#N/A"), std::string("said")};
    EXPECT_EQ(book.sheets.at(0).cells, cells);
    EXPECT_EQ(book.sheets.at(0).formulas, (std::vector<bool>{true, true, true, false}));
}

TEST_F(StoredBook, NotesAndDrawingsAreNoText) {
    const Book book = withRow(
        "<table:table-cell office:value-type=\"string\"><office:annotation><text:p>a note</text:p></office:annotation>"
        "<text:p>typed</text:p><draw:frame><draw:text-box><text:p>drawn</text:p></draw:text-box></draw:frame>"
        "</table:table-cell>");
    EXPECT_EQ(book.cell({0, 0, 0}), Value(std::string("typed")));
}

TEST_F(StoredBook, RepeatedRowsAndCellsStandWhereTheyAre) {
    const auto book = storedBook(
        writeContent(
            "<table:table table:name=\"Other\"><table:table-row><table:table-cell office:value-type=\"float\" "
            "office:value=\"9\"/></table:table-row></table:table><table:table table:name=\"Runs\">"
            "<table:table-column table:number-columns-repeated=\"2\"/><table:table-column table:visibility=\"collapse\"/>"
            "<table:table-column table:number-columns-repeated=\"16381\"/>"
            "<table:table-row table:number-rows-repeated=\"3\"><table:table-cell table:number-columns-repeated=\"16384\"/>"
            "</table:table-row><table:table-row table:number-rows-repeated=\"2\"><table:table-cell "
            "table:number-columns-repeated=\"2\"/><table:covered-table-cell office:value-type=\"float\" office:value=\"7\" "
            "table:number-columns-repeated=\"2\"/><table:table-cell table:number-columns-repeated=\"16380\"/>"
            "</table:table-row><table:table-row table:number-rows-repeated=\"1048571\"><table:table-cell "
            "table:number-columns-repeated=\"16384\"/></table:table-row></table:table>"),
        {"Runs"});
    ASSERT_TRUE(book);
    EXPECT_TRUE(book->sheets.at(0).cells.empty());  // not asked for
    EXPECT_EQ(book->sheets.at(1).rows, 5);
    EXPECT_EQ(book->sheets.at(1).columns, 4);
    for (const int row : {3, 4})
        for (const int column : {2, 3}) EXPECT_EQ(book->cell({1, column, row}), Value(7.0));
    EXPECT_EQ(book->cell({1, 1, 3}), Value());
    EXPECT_TRUE(book->isHidden(1, 2));
    EXPECT_FALSE(book->isHidden(1, 1));
}

TEST_F(StoredBook, PartsAreFoundByTheirNames) {
    const auto book = storedBook(
        writeContent(
            "<table:table table:name=\"Runs\"/><table:table table:name=\"Owner's list-1\"/><table:named-expressions>"
            "<table:named-range table:name=\"table_Runs\" table:cell-range-address=\"$Runs.$A$5:.$AB$92\"/>"
            "<table:named-range table:name=\"form_Job\" table:cell-range-address=\"$'Owner''s list-1'.$B$3:"
            "$'Owner''s list-1'.$C$9\"/><table:named-range table:name=\"units\" "
            "table:cell-range-address=\"$Runs.$C$1\"/><table:named-range table:name=\"gone\" "
            "table:cell-range-address=\"$Lost.$C$1\"/><table:named-range table:name=\"broken\" "
            "table:cell-range-address=\"#REF!\"/></table:named-expressions>"),
        {"Runs"});
    ASSERT_TRUE(book);
    EXPECT_EQ(book->names, (std::map<std::string, Rect>{{"form_Job", {1, 1, 2, 2, 8}},
                                                        {"table_Runs", {0, 0, 4, 27, 91}},
                                                        {"units", {0, 2, 0, 2, 0}}}));
    ASSERT_EQ(book->parts.size(), 2u);
    EXPECT_EQ(book->parts[0].name, "Runs");
    EXPECT_EQ(book->parts[1].is, BookPart::Is::Form);
}

TEST_F(StoredBook, AFunctionThatIsNotThereIsRefused) {
    const auto asks = [&](const std::string& function) {
        return withRow("<table:table-cell/><table:table-cell table:formula=\"of:=IFERROR(" + function +
                       "([.A1]);0)\" office:value-type=\"float\" office:value=\"2\"/>");
    };
    EXPECT_EQ(asks("TRENCHBOOK.FUNCTIONS.PIPECAPACITY").sheets.size(), 1u);
    EXPECT_EQ(asks("MYOWN.SLIP").sheets.size(), 1u);
    for (const char* unknown : {"TRENCHBOOK.FUNCTIONS.PIPETOCOME", "trenchbook.version", "PIPE.CAPACITY"}) {
        try {
            asks(unknown);
            ADD_FAILURE() << unknown;
        } catch (const Refused& refused) {
            EXPECT_NE(std::string(refused.what()).find("Job!B1 asks for the function"), std::string::npos)
                << refused.what();
        }
    }
}

TEST_F(StoredBook, WhatIsNoPlainWorkbookIsLeftToAnOffice) {
    const std::string whole = packedWith("content.xml", "<office:document-content/>", true);
    EXPECT_EQ(unpacked(write(whole), "content.xml"), "<office:document-content/>");
    EXPECT_EQ(unpacked(write(packedWith("content.xml", "as it is", false)), "content.xml"), "as it is");
    for (const std::string& bytes :
         {std::string(), std::string("PK\5\6"), std::string("no packed file"),
          whole.substr(0, whole.size() - 30), whole.substr(20), packedWith("other.xml", "<a/>", true),
          packedWith("content.xml", "<a/>", true, 1), packedWith("content.xml", "<a><b></a>", true), whole}) {
        EXPECT_FALSE(storedBook(write(bytes), {"Job"})) << bytes.size();
    }
    EXPECT_FALSE(storedBook(write(whole, "job.xlsx"), {"Job"}));
    EXPECT_FALSE(unpacked(write(whole), "content.xml", 10));
}

TEST_F(StoredBook, DamagedBytesNeverEndOtherwise) {
    const std::string content(3000, 'x');
    const std::string whole = packedWith("content.xml", content, true);
    for (std::size_t at = 0; at < whole.size(); ++at) {
        std::string damaged = whole;
        damaged[at] = static_cast<char>(damaged[at] ^ 0x5a);
        const auto bytes = unpacked(write(damaged), "content.xml");
        EXPECT_TRUE(!bytes || *bytes == content) << at;
    }
}

}  // namespace
}  // namespace trenchbook::sheets
