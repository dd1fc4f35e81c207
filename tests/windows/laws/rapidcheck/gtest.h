// A law as a test of its own.
#pragma once

#include <gtest/gtest.h>

#include "../rapidcheck.h"

#define RC_GTEST_PROP(Suite, Name, Given)                                                    \
    void law_of_##Suite##_##Name();                                                          \
    TEST(Suite, Name) { EXPECT_TRUE(rc::check(#Suite "." #Name, law_of_##Suite##_##Name)); } \
    void law_of_##Suite##_##Name()
