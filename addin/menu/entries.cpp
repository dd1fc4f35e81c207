#include "menu/entries.h"

#include <algorithm>
#include <string_view>

namespace trenchbook::addin {
namespace {

std::string plainTitle(std::string title) {
    title.erase(std::remove(title.begin(), title.end(), '~'), title.end());
    constexpr std::string_view asks = "…";
    if (title.ends_with(asks)) title.erase(title.size() - asks.size());
    return title;
}

}  // namespace

const std::vector<MenuEntry>& menuEntries() {
    static const std::vector<MenuEntry> all = {
        {"NewJob", {"New ~job", "Obra ~nueva"}},
        {"NewLot", {"New ~lot from this job", "Nuevo ~lote a partir de esta obra"}, false, false},
        {"Shots", {"~Site notes from CSV…", "Notas de ~campo desde CSV…"}, true},
        {"NextMissing", {"Next thing ~missing", "Lo siguiente que ~falta"}},
        {"Sheets", {"Sheets ~needed, or every one", "Las ~hojas que hacen falta, o todas"}},
        {"Explain", {"~Explain this cell", "~Explicar esta celda"}},
        {"Prices", {"Bring in ~prices…", "Traer ~precios…"}, true},
        {"Buy", {"Suppliers side b~y side…", "Pro~veedores lado a lado…"}},
        {"Option", {"Other ~way to do it…", "Otra ~manera de hacerlo…"}},
        {"Order", {"Issue the ~order…", "Emitir el pe~dido…"}},
        {"Change", {"C~hange from another file…", "Cambio de~sde otro archivo…"}},
        {"Estimate", {"Sold: the es~timate to Close-out", "Vendida: lo es~timado a Close-out"}, true},
        {"Actual", {"What ~bills and hours cost", "Lo que costaron fact~uras y horas"}},
        {"Learn", {"Learn ~rates from the ledger…", "Aprender ~rendimientos del libro de obras…"}},
        {"Close",
         {"Take a finished job into this led~ger…", "Llevar una obra terminada a este li~bro de obras…"}},
        {"PrintRanges", {"Print ranges follow the ~filled rows", "~Imprimir solo las filas llenas"}, true},
        {"Papers", {"Papers as P~DF…", "D~ocumentos en PDF…"}, false, false},
        {"DrawingFiles", {"Drawing as D~XF and GeoJSON…", "Plano en D~XF y GeoJSON…"}},
        {"CopyValues",
         {"~Copy for somebody without the add-in…", "Copia para ~quien no tiene el complemento…"}},
        {"About", {"~About and self-test", "~Acerca de y autoprueba"}, true},
    };
    return all;
}

Text titleOf(const std::string& command) {
    for (const MenuEntry& entry : menuEntries())
        if (entry.command == command) return {plainTitle(entry.title.en), plainTitle(entry.title.es)};
    return {};
}

}  // namespace trenchbook::addin
