// A price book's news for a job: only prices that the book has with a date, older ones never take the place of newer.
#pragma once

#include "commands/steps.h"

namespace trenchbook::sheets {

struct PriceNews {
    Steps steps{};  // what brings them in; old prices stay visible beside the new ones
    std::string
        list{};  // what is new and what is left as it is, in lines to print; all words in the job's language
    std::size_t rows = 0;  // that the steps change
    std::string asks{};    // whether they are to come in
    std::string taken{};   // when they are in
    std::string left{};    // when they are not; for notTaken()
};
// That nothing was changed, and by which word the prices come in: "Take".
std::string notTaken(const PriceNews& news, const std::string& word);

// Throws Refused where the book is none, or where Prices has no row left.
PriceNews priceNews(const Book& job, const Book& book);

}  // namespace trenchbook::sheets
