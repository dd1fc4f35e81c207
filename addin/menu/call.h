// One use of a menu command: where it was given, with which words, and how it talks to whoever gave it.
#pragma once

#include <com/sun/star/frame/XFrame.hpp>
#include <com/sun/star/task/XStatusIndicator.hpp>
#include <com/sun/star/uno/XComponentContext.hpp>
#include <filesystem>
#include <map>
#include <optional>
#include <string>

#include "commands/steps.h"
#include "jobbook/parts.h"
#include "jobbook/refused.h"
#include "trenchbook/core/text.h"

namespace trenchbook::addin {

namespace css = ::com::sun::star;
using css::uno::Reference;
using css::uno::UNO_QUERY;
using css::uno::UNO_QUERY_THROW;
using sheets::Document;
using sheets::Refused;

class Call {
  public:
    using Arguments = std::map<std::string, css::uno::Any>;

    // `byProgram`: whoever gave the command waits for its answer and gave all that it needs; nobody is asked.
    Call(Reference<css::uno::XComponentContext> context, Reference<css::frame::XFrame> frame,
         std::string command, Arguments arguments, bool byProgram);

    const Reference<css::uno::XComponentContext>& context() const { return context_; }
    const Reference<css::frame::XFrame>& frame() const { return frame_; }
    const std::string& command() const { return command_; }
    bool byProgram() const { return byProgram_; }
    // Of the office, unless the argument Language says "en" or "es".
    Language language() const { return language_; }
    std::string in(const Text& text) const { return text.in(language_); }

    // The frame's document; the second throws Refused where it is no job workbook, or where a
    // function of ours that it uses is not there.
    Document document() const;
    Document job() const;

    // Arguments by name; nothing when left out. Throw Refused naming the argument where it is of another kind.
    std::optional<std::string> text(const std::string& name) const;
    bool flag(const std::string& name) const;

  private:
    Reference<css::uno::XComponentContext> context_;
    Reference<css::frame::XFrame> frame_;
    std::string command_;
    Arguments arguments_;
    bool byProgram_;
    Language language_;
};

// What a command has to say when it is done, and whether a person is told in a box: not where he sees it anyway.
struct Answer {
    std::string says{};
    bool box = true;
    Reference<css::frame::XFrame> over{};  // the window that the box belongs to, where it is another one
};

// A bar in the window's status line, for what takes over a second. Without a window nothing shows.
class Progress {
  public:
    Progress(const Call& call, int steps);
    ~Progress();
    Progress(const Progress&) = delete;
    Progress& operator=(const Progress&) = delete;
    void reach(int step);

  private:
    Reference<css::task::XStatusIndicator> bar_;
};

// All that a command changes is one step to be undone, with the command's title. Changes nothing when it is empty; the
// workbook is computed afterwards.
void change(const Call& call, const Document& document, const sheets::Steps& steps);

}  // namespace trenchbook::addin
