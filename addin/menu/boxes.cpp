#include "menu/boxes.h"

#include <com/sun/star/awt/MessageBoxButtons.hpp>
#include <com/sun/star/awt/Toolkit.hpp>
#include <com/sun/star/awt/XMessageBox.hpp>

#include "menu/entries.h"

namespace trenchbook::addin {

void show(const Call& call, Box kind, const std::string& says) {
    if (!call.frame().is()) return;
    const Reference<css::awt::XWindowPeer> parent(call.frame()->getContainerWindow(), UNO_QUERY);
    if (!parent.is()) return;
    const auto box =
        css::awt::Toolkit::create(call.context())
            ->createMessageBox(
                parent,
                kind == Box::Done ? css::awt::MessageBoxType_INFOBOX : css::awt::MessageBoxType_WARNINGBOX,
                css::awt::MessageBoxButtons::BUTTONS_OK,
                sheets::wide("Trenchbook: " + call.in(titleOf(call.command()))), sheets::wide(says));
    box->execute();
    Reference<css::lang::XComponent>(box, UNO_QUERY_THROW)->dispose();
}

}  // namespace trenchbook::addin
