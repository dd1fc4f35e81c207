// A few recent answers by their question: for functions that share one costly computation, called one after
// the other with the same cells. The question is compared whole, so an answer is never taken for another's.
#pragma once

#include <algorithm>
#include <deque>
#include <memory>
#include <mutex>
#include <string>

#include "catalog/arguments.h"

namespace trenchbook::addin {

template <class Answer>
class Recent {
  public:
    explicit Recent(std::size_t most) : most_(most) {}

    // The answer to `question`, made when it is not among the recent ones. Two threads with one question may
    // both make it; neither waits while the other computes. What `make` throws is not kept.
    template <class Make>
    std::shared_ptr<const Answer> get(const std::string& question, const Make& make) {
        if (std::shared_ptr<const Answer> known = find(question)) return known;
        auto made = std::make_shared<const Answer>(make());
        const std::lock_guard lock(mutex_);
        kept_.push_front({question, made});
        if (kept_.size() > most_) kept_.pop_back();
        return made;
    }

  private:
    struct Entry {
        std::string question;
        std::shared_ptr<const Answer> answer;
    };

    std::shared_ptr<const Answer> find(const std::string& question) {
        const std::lock_guard lock(mutex_);
        const auto found = std::find_if(kept_.begin(), kept_.end(),
                                        [&](const Entry& entry) { return entry.question == question; });
        if (found == kept_.end()) return nullptr;
        std::rotate(kept_.begin(), found, found + 1);  // the latest in front
        return kept_.front().answer;
    }

    std::size_t most_;
    std::mutex mutex_;
    std::deque<Entry> kept_;
};

// Appends a value of a call, with its type, size and content.
void addToQuestion(std::string& question, const Value& value);
// A call's units and its arguments from `first` up to `end`: equal for calls that give the same.
std::string questionOf(const Arguments& arguments, std::size_t first, std::size_t end);

}  // namespace trenchbook::addin
