// Writes the shipped workbooks as templates:   template_builder EXTENSIONS OUTDIR
#include <cstdio>

#include "kit/writer.h"
#include "templates/job.h"

int main(int count, char** words) {
    using namespace trenchbook::sheets;
    namespace fs = std::filesystem;
    if (count != 3) {
        std::fputs("template_builder EXTENSIONS OUTDIR: writes every shipped workbook as OUTDIR/NAME.ots\n",
                   stderr);
        return 2;
    }
    try {
        const fs::path folder = words[2];
        fs::create_directories(folder);
        Office office(words[1]);
        for (const Shipped& shipped : shippedWorkbooks()) {
            const Workbook workbook = shipped.make();
            const Layout layout(workbook);
            const auto document = office.newDocument();
            write(layout, office, document);
            store(document, folder / (std::string(shipped.file) + ".ots"), "calc8_template");
            close(document);
        }
        return 0;
    } catch (const css::uno::Exception& error) {
        std::fprintf(stderr, "template_builder: the office says: %s\n", narrow(error.Message).c_str());
    } catch (const std::exception& error) {
        std::fprintf(stderr, "template_builder: %s\n", error.what());
    }
    return 1;
}
