#include "jobbook/packed.h"

#include <zlib.h>

#include <algorithm>
#include <cstdint>
#include <fstream>
#include <sstream>
#include <stdexcept>

namespace trenchbook::sheets {
namespace {

// The format is PKWARE's APPNOTE.TXT: a list of what is in the file stands at its end (4.3.12), and the place of that list
// in the last record of all (4.3.16), which a comment of up to 65,535 bytes may follow.
class Packed {
  public:
    explicit Packed(std::string bytes) : bytes_(std::move(bytes)) {}

    std::uint32_t number(std::size_t at, int size) const {
        if (at + static_cast<std::size_t>(size) > bytes_.size()) throw std::out_of_range("packed file");
        std::uint32_t value = 0;
        for (int b = size - 1; b >= 0; --b)
            value = value << 8 | static_cast<unsigned char>(bytes_[at + static_cast<std::size_t>(b)]);
        return value;
    }
    std::string_view part(std::size_t at, std::size_t size) const {
        if (at > bytes_.size() || size > bytes_.size() - at) throw std::out_of_range("packed file");
        return std::string_view(bytes_).substr(at, size);
    }
    std::size_t lastRecord() const {
        const std::size_t found = bytes_.rfind("PK\5\6");
        if (found == std::string::npos) throw std::out_of_range("packed file");
        return found;
    }

  private:
    std::string bytes_;
};

struct Entry {
    std::uint32_t flags = 0, method = 0, sum = 0, packedSize = 0, size = 0, at = 0;
};

std::optional<Entry> entryOf(const Packed& packed, const std::string& name) {
    const std::size_t last = packed.lastRecord();
    const std::uint32_t entries = packed.number(last + 10, 2);
    std::size_t at = packed.number(last + 16, 4);
    for (std::uint32_t n = 0; n < entries; ++n) {
        if (packed.part(at, 4) != "PK\1\2") return std::nullopt;
        const std::uint32_t nameSize = packed.number(at + 28, 2);
        if (packed.part(at + 46, nameSize) == name)
            return Entry{packed.number(at + 8, 2),  packed.number(at + 10, 2), packed.number(at + 16, 4),
                         packed.number(at + 20, 4), packed.number(at + 24, 4), packed.number(at + 42, 4)};
        at += 46 + nameSize + packed.number(at + 30, 2) + packed.number(at + 32, 2);
    }
    return std::nullopt;
}

std::optional<std::string> inflated(std::string_view packed, std::size_t size) {
    std::string bytes(size, '\0');
    z_stream stream{};
    if (inflateInit2(&stream, -MAX_WBITS) != Z_OK) return std::nullopt;
    stream.next_in = reinterpret_cast<Bytef*>(const_cast<char*>(packed.data()));
    stream.avail_in = static_cast<uInt>(packed.size());
    stream.next_out = reinterpret_cast<Bytef*>(bytes.data());
    stream.avail_out = static_cast<uInt>(bytes.size());
    const int ended = inflate(&stream, Z_FINISH);
    const bool whole = ended == Z_STREAM_END && stream.total_out == size;
    inflateEnd(&stream);
    return whole ? std::optional(std::move(bytes)) : std::nullopt;
}

std::uint32_t sumOf(const std::string& bytes) {
    return static_cast<std::uint32_t>(
        crc32(0, reinterpret_cast<const Bytef*>(bytes.data()), static_cast<uInt>(bytes.size())));
}

}  // namespace

std::optional<std::string> unpacked(const std::filesystem::path& file, const std::string& name,
                                    std::size_t limit) {
    std::ifstream in(file, std::ios::binary);
    std::ostringstream all;
    if (!in || !(all << in.rdbuf())) return std::nullopt;
    try {
        const Packed packed(std::move(all).str());
        const std::optional<Entry> entry = entryOf(packed, name);
        constexpr std::uint32_t encrypted = 1, stored = 0, deflated = 8;
        if (!entry || (entry->flags & encrypted) != 0 || entry->size > limit) return std::nullopt;
        const std::size_t data =
            entry->at + 30 + packed.number(entry->at + 26, 2) + packed.number(entry->at + 28, 2);
        const std::string_view bytes = packed.part(data, entry->packedSize);
        std::optional<std::string> whole;
        if (entry->method == deflated) whole = inflated(bytes, entry->size);
        if (entry->method == stored) whole = bytes;
        if (whole && sumOf(*whole) == entry->sum) return whole;
    } catch (const std::out_of_range&) {
        // Cut off, or no packed file at all.
    }
    return std::nullopt;
}

}  // namespace trenchbook::sheets
