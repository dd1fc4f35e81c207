#include "formula/parse.h"

#include <cctype>
#include <regex>
#include <stdexcept>

namespace trenchbook::sheets {
namespace {

bool isNameLetter(char c) {
    return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '_' || c == '.' || c == '$' || c == '\'';
}

// By descent: comparison, then &, + and -, * and /, ^, signs and %, operands. Every operator of one level stands in
// one operation; which binds closer changes nothing for those who look for what a formula reads.
class Parser {
  public:
    explicit Parser(const std::string& formula) : text_(formula) {}

    Node whole() {
        Node tree = expression();
        if (at_ < text_.size()) fail(std::string("unexpected ") + text_[at_]);
        return tree;
    }

  private:
    [[noreturn]] void fail(const std::string& what) const {
        throw std::logic_error(what + " at character " + std::to_string(at_ + 1));
    }
    void blanks() {
        while (at_ < text_.size() && std::isspace(static_cast<unsigned char>(text_[at_])) != 0) ++at_;
    }
    bool take(char c) {
        blanks();
        if (at_ >= text_.size() || text_[at_] != c) return false;
        ++at_;
        return true;
    }

    Node expression() {
        Node first = signedOperand();
        for (std::string sign = operation(); !sign.empty(); sign = operation()) {
            Node joined{.is = Node::Is::Operation, .text = sign};
            joined.parts.push_back(std::move(first));
            joined.parts.push_back(signedOperand());
            first = std::move(joined);
        }
        return first;
    }
    std::string operation() {
        blanks();
        for (const char* sign : {"<>", "<=", ">=", "<", ">", "=", "&", "+", "-", "*", "/", "^", ":"})
            if (text_.compare(at_, std::char_traits<char>::length(sign), sign) == 0) {
                at_ += std::char_traits<char>::length(sign);
                return sign;
            }
        return "";
    }
    Node signedOperand() {
        if (take('-') || take('+'))
            return Node{.is = Node::Is::Operation, .text = "sign", .parts = {signedOperand()}};
        Node made = operand();
        while (take('%')) made = Node{.is = Node::Is::Operation, .text = "%", .parts = {std::move(made)}};
        return made;
    }
    Node operand() {
        blanks();
        if (at_ >= text_.size()) fail("the formula ends too early");
        if (take('(')) {
            Node inside = expression();
            if (!take(')')) fail("a parenthesis is not closed");
            return inside;
        }
        switch (text_[at_]) {
            case '"':
                return quoted();
            case '[':
                return Node{.is = Node::Is::Table, .text = between('[', ']')};
            case '{':
                return braces();
            case '<':
                return Node{.is = Node::Is::Block, .text = between('<', '>')};
            default:
                break;
        }
        if (std::isdigit(static_cast<unsigned char>(text_[at_])) != 0) return number();
        return word();
    }
    Node quoted() {
        Node made{.is = Node::Is::Text};
        for (++at_; at_ < text_.size(); ++at_) {
            if (text_[at_] == '"') {
                if (at_ + 1 >= text_.size() || text_[at_ + 1] != '"') {
                    ++at_;
                    return made;
                }
                ++at_;
            }
            made.text += text_[at_];
        }
        fail("a quote is not closed");
    }
    std::string between(char open, char closing) {
        const auto end = text_.find(closing, at_);
        if (end == std::string::npos) fail(std::string(1, open) + " is not closed");
        const std::string inside = text_.substr(at_ + 1, end - at_ - 1);
        at_ = end + 1;
        return inside;
    }
    Node braces() {
        static const std::regex key("[a-z][a-z0-9]*(?:\\.[a-z0-9]+)*");
        const std::size_t start = at_;
        const std::string inside = between('{', '}');
        if (std::regex_match(inside, key)) return Node{.is = Node::Is::Rule, .text = inside};
        at_ = start + 1;
        Node made{.is = Node::Is::Array};
        do made.parts.push_back(signedOperand());
        while (take(';') || take('|'));
        if (!take('}')) fail("{ is not closed");
        return made;
    }
    Node number() {
        const std::size_t start = at_;
        while (at_ < text_.size() &&
               (std::isdigit(static_cast<unsigned char>(text_[at_])) != 0 || text_[at_] == '.'))
            ++at_;
        if (at_ < text_.size() && (text_[at_] == 'e' || text_[at_] == 'E')) {
            ++at_;
            if (at_ < text_.size() && (text_[at_] == '-' || text_[at_] == '+')) ++at_;
            while (at_ < text_.size() && std::isdigit(static_cast<unsigned char>(text_[at_])) != 0) ++at_;
        }
        return Node{.is = Node::Is::Number, .text = text_.substr(start, at_ - start)};
    }
    Node word() {
        const std::size_t start = at_;
        while (at_ < text_.size() && (isNameLetter(text_[at_]) || text_[at_] == ':')) ++at_;
        if (at_ == start) fail(std::string("unexpected ") + text_[at_]);
        Node made{.is = Node::Is::Name, .text = text_.substr(start, at_ - start)};
        if (!take('(')) return made;
        made.is = Node::Is::Call;
        blanks();
        if (take(')')) return made;
        do {
            blanks();
            const bool leftOut = at_ < text_.size() && (text_[at_] == ';' || text_[at_] == ')');
            made.parts.push_back(leftOut ? Node{} : expression());
        } while (take(';'));
        if (!take(')')) fail("the call of " + made.text + " is not closed");
        return made;
    }

    const std::string& text_;
    std::size_t at_ = 0;
};

}  // namespace

Node parseFormula(const std::string& formula) { return Parser(formula).whole(); }

}  // namespace trenchbook::sheets
