// Days as they are written: year, month, day.
#include "day.h"

#include "catch.h"

namespace haunch::test {

TEST_CASE("A day is read as it is written, and written as it was read") {
  for (const char* text : {"2031-05-17", "2024-02-29", "2000-02-29", "0001-01-01", "9999-12-31"}) {
    INFO(text);
    REQUIRE(day_of(text));
    CHECK(day_text(*day_of(text)) == text);
  }
}

TEST_CASE("What is no day of the calendar, or is written in another way, is none") {
  for (const char* text :
       {"2031-02-29", "2100-02-29", "2031-04-31", "2031-13-01", "2031-00-10", "2031-05-00",
        "17.5.2031", "5/17/2031", "2031-5-17", "2031-05-17 ", "2031-05-1x", "", "tomorrow"}) {
    INFO(text);
    CHECK_FALSE(day_of(text));
  }
}

TEST_CASE("Between days are as many days as the calendar has") {
  CHECK((*day_of("2024-03-01") - *day_of("2024-02-01")).count() == 29);
  CHECK((*day_of("2032-01-01") - *day_of("2031-12-25")).count() == 7);
}

}  // namespace haunch::test
