#include "species_data.h"

#include <array>

namespace haunch {
namespace {

// Sources in plain words. FPL is the Forest Products Laboratory of the USDA, which prints the Wood
// Handbook (2010: FPL-GTR-190). "One source" means that no second copy was found.
constexpr std::string_view kTable13 = "Wood Handbook 2010 Table 13-5 (agrees with Table 4-3)";
constexpr std::string_view kTable13AndCharts =
    "Wood Handbook 2010 Table 13-5 (agrees with Table 4-3), tangential also in two flooring-trade "
    "charts";
constexpr std::string_view kTable13Alone = "Wood Handbook 2010 Table 13-5 (one source)";
constexpr std::string_view kTable13Sister =
    "Wood Handbook 2010 Table 13-5 (does not follow from the Table 4-3 values; printed so)";
constexpr std::string_view kTable13JointRow =
    "Wood Handbook 2010 Table 13-5, joint row for water, laurel and willow oak (one source)";
constexpr std::string_view kTable13Shrinkage =
    "Wood Handbook 2010 Table 13-5 (agrees with the shrinkage)";
constexpr std::string_view kGermanTable =
    "German timber-trade table of differential shrinkage, percent per percent moisture (one "
    "source)";
constexpr std::string_view kChartsTangential =
    "tangential from two flooring-trade charts that name the Wood Handbook; radial not found";
constexpr std::string_view kTable4 = "Wood Handbook 2010 Table 4-3 (one source)";
constexpr std::string_view kTable4Imported = "Wood Handbook 2010 Table 4-4 (one source)";
constexpr std::string_view kMerchant = "a timber-merchant page (one source)";
constexpr std::string_view kTwoMerchants = "two timber-merchant pages agree";
constexpr std::string_view kMerchantDatabase =
    "a timber-merchant page quoting a wood-property database (one source)";
constexpr std::string_view kTwoMerchantsDatabase =
    "two timber-merchant pages quoting a wood-property database agree";
constexpr std::string_view kTwoTables =
    "Wood Handbook 2010 Table 5-3a and the US Forest Inventory species table agree at 12 %; green "
    "from the latter";
constexpr std::string_view kInventory11 =
    "US Forest Inventory species table only (inventory citation 11; one source)";
constexpr std::string_view kInventory1And21 =
    "US Forest Inventory species table only (inventory citation 1 green / 21 at 12 %; one source)";
constexpr std::string_view kSamePages = "green from the same two pages as the shrinkage";
constexpr std::string_view kTable5Alone =
    "at 12 % Table 5-3a of the Wood Handbook 2010 (one source)";
constexpr std::string_view kWhiteOakGroup =
    "the commercial white oak coefficients of Table 13-5 cover this group; it has no row of its "
    "own";

constexpr std::string_view kHardwood = "hardwood";
constexpr std::string_view kSoftwood = "softwood";
constexpr std::string_view kTropical = "tropical";

constexpr std::nullopt_t kNone = std::nullopt;

constexpr std::array kRows = {
    SpeciesRow{"Alder, red", kHardwood, 0.00151, 0.00256, 4.4, 7.3, 0.37, 0.41, kTable13, kTable4,
               kTwoTables, ""},
    SpeciesRow{"Apple", kHardwood, 0.00205, 0.00376, kNone, kNone, kNone, kNone, kTable13Alone, "",
               "", ""},
    SpeciesRow{"Ash, black", kHardwood, 0.00172, 0.00274, 5.0, 7.8, 0.45, 0.49, kTable13, kTable4,
               kTwoTables, ""},
    SpeciesRow{"Ash, blue", kHardwood, kNone, kNone, 3.9, 6.5, 0.53, 0.58, "", kTable4, kTwoTables,
               ""},
    SpeciesRow{"Ash, European", kHardwood, 0.0021, 0.0038, 5.0, 8.0, kNone, 0.627,
               "German timber-trade table and an Austrian timber-merchant sheet agree",
               "an Austrian timber-merchant sheet and a second merchant page agree",
               "worked out from the density at 12 % moisture, 702 kg/m3, of the Austrian sheet",
               "another merchant page prints the shrinkages 5.7 and 9.6"},
    SpeciesRow{"Ash, green", kHardwood, 0.00169, 0.00274, 4.6, 7.1, 0.53, 0.56, kTable13Sister,
               kTable4, kTwoTables, "Table 13-5 prints the white ash values for green ash"},
    SpeciesRow{"Ash, Oregon", kHardwood, 0.00141, 0.00285, 4.1, 8.1, 0.50, 0.55, kTable13, kTable4,
               kTwoTables, ""},
    SpeciesRow{"Ash, pumpkin", kHardwood, 0.00126, 0.00219, 3.7, 6.3, 0.48, 0.52, kTable13, kTable4,
               kInventory11, ""},
    SpeciesRow{"Ash, white", kHardwood, 0.00169, 0.00274, 4.9, 7.8, 0.55, 0.60, kTable13AndCharts,
               kTable4, kTwoTables, ""},
    SpeciesRow{"Aspen, bigtooth", kHardwood, kNone, kNone, 3.3, 7.9, 0.36, 0.39, "", kTable4,
               kTwoTables, ""},
    SpeciesRow{"Aspen, quaking", kHardwood, 0.00119, 0.00234, 3.5, 6.7, 0.35, 0.38, kTable13,
               kTable4, kTwoTables, ""},
    SpeciesRow{"Basswood, American", kHardwood, 0.00230, 0.00330, 6.6, 9.3, 0.32, 0.37, kTable13,
               kTable4, kTwoTables, ""},
    SpeciesRow{"Beech, American", kHardwood, 0.00190, 0.00431, 5.5, 11.9, 0.56, 0.64,
               kTable13AndCharts, kTable4, kTwoTables, ""},
    SpeciesRow{"Beech, European", kHardwood, 0.0020, 0.0041, 5.8, 11.8, kNone, 0.616, kGermanTable,
               "a German merchant sheet citing Wagenfuehr (1996) and a second page agree",
               "worked out from the density at 12 % moisture, 690 kg/m3, of the German sheet", ""},
    SpeciesRow{"Birch, European", kHardwood, 0.0029, 0.0041, kNone, kNone, kNone, kNone,
               kGermanTable, "", "", ""},
    SpeciesRow{"Birch, paper", kHardwood, 0.00219, 0.00304, 6.3, 8.6, 0.48, 0.55, kTable13, kTable4,
               kTwoTables, ""},
    SpeciesRow{"Birch, river", kHardwood, 0.00162, 0.00327, 4.7, 9.2, 0.49, 0.56, kTable13, kTable4,
               kInventory11, ""},
    SpeciesRow{"Birch, sweet", kHardwood, 0.00256, 0.00338, 6.5, 9.0, 0.60, 0.65, kTable13Sister,
               kTable4, kTwoTables, "Table 13-5 prints the yellow birch values for sweet birch"},
    SpeciesRow{"Birch, yellow", kHardwood, 0.00256, 0.00338, 7.3, 9.5, 0.55, 0.62,
               kTable13AndCharts, kTable4, kTwoTables, ""},
    SpeciesRow{"Buckeye, yellow", kHardwood, 0.00123, 0.00285, 3.6, 8.1, 0.33, 0.36, kTable13,
               kTable4, kInventory11, ""},
    SpeciesRow{"Butternut", kHardwood, 0.00116, 0.00223, 3.4, 6.4, 0.36, 0.38, kTable13, kTable4,
               kTwoTables, ""},
    SpeciesRow{"Catalpa, northern", kHardwood, 0.00085, 0.00169, kNone, kNone, 0.38, 0.41,
               kTable13Alone, "", kInventory11, ""},
    SpeciesRow{"Cherry, black", kHardwood, 0.00126, 0.00248, 3.7, 7.1, 0.47, 0.50,
               kTable13AndCharts, kTable4, kTwoTables, ""},
    SpeciesRow{"Chestnut, American", kHardwood, 0.00116, 0.00234, 3.4, 6.7, 0.40, 0.43, kTable13,
               kTable4, kTwoTables, ""},
    SpeciesRow{"Cottonwood, balsam poplar", kHardwood, kNone, kNone, 3.0, 7.1, 0.31, 0.34, "",
               kTable4, kTwoTables, ""},
    SpeciesRow{"Cottonwood, black", kHardwood, 0.00123, 0.00304, 3.6, 8.6, 0.31, 0.35, kTable13,
               kTable4, kTwoTables, ""},
    SpeciesRow{"Cottonwood, eastern", kHardwood, 0.00133, 0.00327, 3.9, 9.2, 0.37, 0.40, kTable13,
               kTable4, kTwoTables, ""},
    SpeciesRow{"Elm, American", kHardwood, 0.00144, 0.00338, 4.2, 9.5, 0.46, 0.50, kTable13,
               kTable4, kTwoTables, ""},
    SpeciesRow{"Elm, cedar", kHardwood, 0.00183, 0.00419, 4.7, 10.2, 0.59, 0.64, kTable13Sister,
               kTable4, kInventory11, "Table 13-5 prints the winged elm values for cedar elm"},
    SpeciesRow{"Elm, European", kHardwood, 0.0020, 0.0023, kNone, kNone, kNone, kNone, kGermanTable,
               "", "", ""},
    SpeciesRow{"Elm, rock", kHardwood, 0.00165, 0.00285, 4.8, 8.1, 0.57, 0.63, kTable13, kTable4,
               kTwoTables, ""},
    SpeciesRow{"Elm, slippery", kHardwood, 0.00169, 0.00315, 4.9, 8.9, 0.48, 0.53, kTable13,
               kTable4, kTwoTables, ""},
    SpeciesRow{"Elm, winged", kHardwood, 0.00183, 0.00419, 5.3, 11.6, 0.60, 0.66, kTable13, kTable4,
               kInventory11, ""},
    SpeciesRow{"Hackberry", kHardwood, 0.00165, 0.00315, 4.8, 8.9, 0.49, 0.53, kTable13, kTable4,
               kTwoTables, ""},
    SpeciesRow{"Hickory, mockernut", kHardwood, kNone, kNone, 7.7, 11.0, 0.64, 0.72, "", kTable4,
               kTwoTables, ""},
    SpeciesRow{"Hickory, pecan", kHardwood, 0.00169, 0.00315, 4.9, 8.9, 0.60, 0.66,
               kTable13AndCharts, kTable4, kTwoTables, ""},
    SpeciesRow{"Hickory, pignut", kHardwood, kNone, kNone, 7.2, 11.5, 0.66, 0.75, "", kTable4,
               kTwoTables, ""},
    SpeciesRow{"Hickory, shagbark (true hickory)", kHardwood, kNone, 0.00411, 7.0, 10.5, 0.64, 0.72,
               "tangential 0.00411 for true hickory from two flooring-trade charts that name the "
               "Wood Handbook; radial not found",
               "a wood-property database page and two timber-merchant pages agree", kTwoTables, ""},
    SpeciesRow{"Honeylocust", kHardwood, 0.00144, 0.00230, kNone, kNone, 0.60, 0.65, kTable13Alone,
               "", kInventory1And21, ""},
    SpeciesRow{"Locust, black", kHardwood, 0.00158, 0.00252, kNone, kNone, 0.66, 0.69,
               kTable13Alone, "", kTwoTables, ""},
    SpeciesRow{"Madrone, Pacific", kHardwood, 0.00194, 0.00451, kNone, kNone, 0.58, 0.65,
               kTable13Alone, "", kInventory11, ""},
    SpeciesRow{"Magnolia, cucumbertree", kHardwood, 0.00180, 0.00312, kNone, kNone, 0.44, 0.48,
               kTable13Alone, "", kTwoTables, ""},
    SpeciesRow{"Magnolia, southern", kHardwood, 0.00187, 0.00230, kNone, kNone, 0.46, 0.50,
               kTable13Alone, "",
               "Wood Handbook 2010 Table 5-3a and the US Forest Inventory species table agree at "
               "12 %; green from the latter (inventory citation 23)",
               ""},
    SpeciesRow{"Magnolia, sweetbay", kHardwood, 0.00162, 0.00293, kNone, kNone, 0.42, 0.46,
               kTable13Alone, "", kInventory11, ""},
    SpeciesRow{"Maple, bigleaf", kHardwood, 0.00126, 0.00248, kNone, kNone, 0.44, 0.48,
               kTable13Alone, "", kTwoTables, ""},
    SpeciesRow{"Maple, black", kHardwood, 0.00165, 0.00353, kNone, kNone, 0.52, 0.57, kTable13Alone,
               "", kTwoTables, ""},
    SpeciesRow{"Maple, red (soft maple)", kHardwood, 0.00137, 0.00289, 4.0, 8.2, 0.49, 0.54,
               kTable13Shrinkage,
               "a timber-merchant page and a magazine page quoting a wood-property database agree",
               kTwoTables, ""},
    SpeciesRow{"Maple, silver (soft maple)", kHardwood, 0.00102, 0.00252, 3.0, 7.2, 0.44, 0.47,
               kTable13Shrinkage, "a timber-trade species page (one source)", kTwoTables, ""},
    SpeciesRow{"Maple, sugar (hard maple)", kHardwood, 0.00165, 0.00353, 4.8, 9.9, 0.56, 0.63,
               "Wood Handbook 2010 Table 13-5 (agrees with the shrinkage), tangential also in two "
               "flooring-trade charts and by the maple flooring manufacturers association",
               "a timber-trade species page and a woodworker page agree", kTwoTables, ""},
    SpeciesRow{"Oak, California black", kHardwood, 0.00123, 0.00230, kNone, kNone, 0.51, 0.55,
               kTable13Alone, "",
               "US Forest Inventory species table only (inventory citation 15 green / 21 at 12 %; "
               "one source)",
               "Table 13-5 also prints these two values against black oak, which looks like the "
               "same row printed twice; black oak has no row here"},
    SpeciesRow{"Oak, chestnut", kHardwood, kNone, kNone, 5.3, 10.8, 0.57, 0.66, "", kTable4,
               kTwoTables, kWhiteOakGroup},
    SpeciesRow{"Oak, European", kHardwood, 0.0016, 0.0036, 4.3, 8.9, kNone, 0.627, kGermanTable,
               "European timber promotion sheet (one source)",
               "worked out from the density at 12 % moisture, 702 kg/m3, of the promotion sheet",
               ""},
    SpeciesRow{"Oak, laurel (red oak group)", kHardwood, 0.00151, 0.00350, kNone, kNone, 0.56, 0.63,
               kTable13JointRow, "", kTwoTables, ""},
    SpeciesRow{"Oak, live", kHardwood, 0.00230, 0.00338, 6.6, 9.5, 0.80, 0.88, kTable13, kTable4,
               kTwoTables, ""},
    SpeciesRow{
        "Oak, northern red", kHardwood, 0.00158, 0.00369, 4.0, 8.6, 0.56, 0.63,
        "Wood Handbook 2010 Table 13-5, row for the commercial red oak group, not this species "
        "alone, tangential also in two flooring-trade charts (one of them prints 0.00365)",
        kTwoMerchants, kTwoTables,
        "the group coefficient is larger than the species shrinkage gives (0.00137 and 0.00304)"},
    SpeciesRow{"Oak, Oregon white", kHardwood, 0.00144, 0.00327, kNone, kNone, 0.64, 0.72,
               kTable13Alone, "", kInventory11, ""},
    SpeciesRow{"Oak, overcup", kHardwood, 0.00183, 0.00462, 5.3, 12.7, 0.57, 0.63, kTable13,
               kTable4, kTwoTables, ""},
    SpeciesRow{"Oak, post", kHardwood, kNone, kNone, 5.4, 9.8, 0.60, 0.67, "", kTable4, kTwoTables,
               kWhiteOakGroup},
    SpeciesRow{"Oak, swamp chestnut", kHardwood, kNone, kNone, 5.2, 10.8, 0.60, 0.67, "", kTable4,
               kTwoTables, kWhiteOakGroup},
    SpeciesRow{"Oak, water (red oak group)", kHardwood, 0.00151, 0.00350, kNone, kNone, 0.56, 0.63,
               kTable13JointRow, "", kTwoTables, ""},
    SpeciesRow{"Oak, white", kHardwood, 0.00180, 0.00365, 5.6, 10.5, 0.60, 0.68,
               "Wood Handbook 2010 Table 13-5, row for the commercial white oak group; both values "
               "also on a flooring page quoting the 1999 handbook",
               kTable4, kTwoTables,
               "the group coefficient is a little smaller than the species shrinkage gives "
               "(0.00194 and 0.00376)"},
    SpeciesRow{"Oak, willow (red oak group)", kHardwood, 0.00151, 0.00350, kNone, kNone, 0.56, 0.69,
               kTable13JointRow, "", kTwoTables, ""},
    SpeciesRow{"Persimmon, common", kHardwood, 0.00278, 0.00403, 7.9, 11.2, 0.64, 0.74, kTable13,
               kTable4, "US Forest Inventory species table only (inventory citation 9; one source)",
               ""},
    SpeciesRow{"Poplar, European", kHardwood, 0.0013, 0.0031, kNone, kNone, kNone, kNone,
               kGermanTable, "", "", ""},
    SpeciesRow{"Sassafras", kHardwood, 0.00137, 0.00216, 4.0, 6.2, 0.42, 0.46, kTable13, kTable4,
               kTwoTables, ""},
    SpeciesRow{"Sweetgum", kHardwood, 0.00183, 0.00365, 5.3, 10.2, 0.46, 0.52, kTable13, kTable4,
               kTwoTables, ""},
    SpeciesRow{"Sycamore, American", kHardwood, 0.00172, 0.00296, 5.0, 8.4, 0.46, 0.49, kTable13,
               kTable4, kTwoTables, ""},
    SpeciesRow{"Tanoak", kHardwood, 0.00169, 0.00423, 4.9, 11.7, 0.58, 0.62, kTable13, kTable4,
               kInventory1And21, ""},
    SpeciesRow{"Tupelo, black", kHardwood, 0.00176, 0.00308, 5.1, 8.7, 0.46, 0.50, kTable13,
               kTable4, kTwoTables, ""},
    SpeciesRow{"Tupelo, water", kHardwood, 0.00144, 0.00267, 4.2, 7.6, 0.46, 0.50, kTable13,
               kTable4, kTwoTables, ""},
    SpeciesRow{"Walnut, black", kHardwood, 0.00190, 0.00274, 5.5, 7.8, 0.51, 0.55,
               kTable13AndCharts, kTable4, kTwoTables, ""},
    SpeciesRow{"Walnut, European", kHardwood, 0.0018, 0.0029, kNone, kNone, kNone, kNone,
               kGermanTable, "", "", ""},
    SpeciesRow{"Willow, black", kHardwood, kNone, kNone, 3.3, 8.7, 0.36, 0.39, "", kTable4,
               kTwoTables,
               "radial coefficient 0.00112 is readable in Table 13-5, the tangential one is cut "
               "off in the copy"},
    SpeciesRow{"Yellow-poplar", kHardwood, kNone, kNone, 4.6, 8.2, 0.40, 0.42, "", kTable4,
               kTwoTables, ""},
    SpeciesRow{"Baldcypress", kSoftwood, kNone, kNone, 3.8, 6.2, 0.42, 0.46, "", kTwoMerchants,
               kTwoTables, ""},
    SpeciesRow{"Cedar, Atlantic white", kSoftwood, kNone, kNone, 2.9, 5.4, 0.31, 0.32, "", kTable4,
               kTwoTables, ""},
    SpeciesRow{"Cedar, eastern redcedar", kSoftwood, kNone, kNone, 3.1, 4.7, 0.44, 0.47, "",
               kTable4, kTwoTables, ""},
    SpeciesRow{"Cedar, incense", kSoftwood, kNone, kNone, 3.3, 5.2, 0.35, 0.37, "", kTable4,
               kTwoTables, ""},
    SpeciesRow{"Cedar, northern white", kSoftwood, kNone, kNone, 2.2, 4.9, 0.29, 0.31, "", kTable4,
               kTwoTables, ""},
    SpeciesRow{"Cedar, Port-Orford", kSoftwood, kNone, kNone, 4.6, 6.9, 0.39, 0.43, "", kTable4,
               kTwoTables, ""},
    SpeciesRow{"Cedar, western redcedar", kSoftwood, kNone, kNone, 2.4, 5.0, 0.31, 0.32, "",
               kTable4, kTwoTables, ""},
    SpeciesRow{"Cedar, yellow", kSoftwood, kNone, kNone, 2.8, 6.0, 0.42, 0.44, "", kTable4,
               kTwoTables, ""},
    SpeciesRow{"Douglas-fir, coast", kSoftwood, kNone, 0.00267, 4.8, 7.6, 0.45, 0.48,
               "tangential 0.00267 from two flooring-trade charts that name the Wood Handbook "
               "(agrees with Table 4-3); radial not found",
               kTable4, kTwoTables, ""},
    SpeciesRow{"Douglas-fir, interior north", kSoftwood, kNone, kNone, 3.8, 6.9, kNone, 0.48, "",
               kTable4, kTable5Alone, ""},
    SpeciesRow{"Douglas-fir, interior west", kSoftwood, kNone, kNone, 4.8, 7.5, kNone, 0.50, "",
               kTable4, kTable5Alone, ""},
    SpeciesRow{"Fir, balsam", kSoftwood, kNone, kNone, 2.9, 6.9, 0.33, 0.35, "", kTable4,
               kTwoTables, ""},
    SpeciesRow{"Fir, California red", kSoftwood, kNone, kNone, 4.5, 7.9, 0.36, 0.38, "", kTable4,
               kTwoTables, ""},
    SpeciesRow{"Fir, European silver", kSoftwood, 0.0014, 0.0028, kNone, kNone, kNone, kNone,
               kGermanTable, "", "", ""},
    SpeciesRow{"Fir, grand", kSoftwood, kNone, kNone, 3.4, 7.5, 0.35, 0.37, "", kTable4, kTwoTables,
               ""},
    SpeciesRow{"Fir, noble", kSoftwood, kNone, kNone, 4.3, 8.3, 0.37, 0.39, "", kTable4, kTwoTables,
               ""},
    SpeciesRow{"Fir, Pacific silver", kSoftwood, kNone, kNone, 4.4, 9.2, 0.40, 0.43, "", kTable4,
               kTwoTables, ""},
    SpeciesRow{"Fir, subalpine", kSoftwood, kNone, kNone, 2.6, 7.4, 0.31, 0.32, "", kTable4,
               kTwoTables, ""},
    SpeciesRow{"Fir, white", kSoftwood, kNone, 0.00245, 3.3, 7.0, 0.37, 0.39,
               "tangential 0.00245 is the value in the worked example of Wood Handbook chapter 13 "
               "(agrees with Table 4-3); radial not found",
               kTable4, kTwoTables, ""},
    SpeciesRow{"Hemlock, eastern", kSoftwood, kNone, kNone, 3.0, 6.8, 0.38, 0.40, "", kMerchant,
               kTwoTables, ""},
    SpeciesRow{"Hemlock, mountain", kSoftwood, kNone, kNone, kNone, kNone, 0.42, 0.45, "", "",
               kTwoTables, ""},
    SpeciesRow{"Hemlock, western", kSoftwood, kNone, kNone, 4.2, 7.8, 0.42, 0.45, "",
               kMerchantDatabase, kTwoTables, ""},
    SpeciesRow{"Larch, European", kSoftwood, 0.0014, 0.0030, kNone, kNone, kNone, kNone,
               kGermanTable, "", "", ""},
    SpeciesRow{"Larch, western", kSoftwood, kNone, kNone, kNone, kNone, 0.48, 0.52, "", "",
               kTwoTables, ""},
    SpeciesRow{"Pine, eastern white", kSoftwood, kNone, kNone, 2.1, 6.1, 0.34, 0.35, "",
               "a timber-merchant page (one source); a materials-data page prints 2.3 and 6.0",
               kTwoTables, ""},
    SpeciesRow{"Pine, loblolly (southern yellow pine)", kSoftwood, kNone, kNone, 4.8, 7.4, 0.47,
               0.51, "", "a carpentry reference page (one source)", kTwoTables, ""},
    SpeciesRow{"Pine, lodgepole", kSoftwood, kNone, kNone, kNone, kNone, 0.38, 0.41, "", "",
               kTwoTables, ""},
    SpeciesRow{"Pine, longleaf (southern yellow pine)", kSoftwood, kNone, 0.00263, 5.1, 7.5, 0.54,
               0.59,
               "tangential 0.00263 printed for heart pine in two flooring-trade charts (agrees "
               "with the shrinkage); radial not found",
               "a carpentry reference page and a timber-merchant page agree", kTwoTables, ""},
    SpeciesRow{"Pine, ponderosa", kSoftwood, kNone, kNone, 3.9, 6.2, 0.38, 0.40, "",
               "a wood-property database page (one source)", kTwoTables, ""},
    SpeciesRow{"Pine, red", kSoftwood, kNone, kNone, kNone, kNone, 0.41, 0.46, "", "", kTwoTables,
               ""},
    SpeciesRow{"Pine, Scots", kSoftwood, 0.0019, 0.0036, kNone, kNone, kNone, kNone,
               "German timber-trade table; a German wood lexicon gives ranges 0.0015 to 0.0019 and "
               "0.0025 to 0.0036",
               "", "", ""},
    SpeciesRow{"Pine, shortleaf (southern yellow pine)", kSoftwood, kNone, kNone, kNone, kNone,
               0.47, 0.51, "", "", kTwoTables, ""},
    SpeciesRow{"Pine, slash (southern yellow pine)", kSoftwood, kNone, kNone, kNone, kNone, 0.54,
               0.59, "", "", kTwoTables, ""},
    SpeciesRow{"Pine, southern yellow (group)", kSoftwood, kNone, 0.00265, kNone, kNone, kNone,
               kNone,
               "tangential 0.00265 from two flooring-trade charts that name the Wood Handbook; "
               "radial not found",
               "", "", ""},
    SpeciesRow{"Pine, sugar", kSoftwood, kNone, kNone, kNone, kNone, 0.34, 0.36, "", "", kTwoTables,
               "the FPL species sheet prints 0.34 green and 0.38 dry"},
    SpeciesRow{"Pine, western white", kSoftwood, kNone, kNone, kNone, kNone, 0.36, 0.38, "", "",
               "US Forest Inventory species table (citation 1); the extract of Table 5-3a prints "
               "0.35 at 12 % (conflict)",
               ""},
    SpeciesRow{"Redwood", kSoftwood, kNone, kNone, 2.4, 4.7, 0.36, 0.38, "", kTwoMerchantsDatabase,
               "US Forest Inventory species table only (inventory citation 1; one source)",
               "Table 5-3a of the Wood Handbook 2010 separates old-growth (specific gravity 12 % "
               "0.40) and young-growth (0.35)"},
    SpeciesRow{"Spruce, black", kSoftwood, kNone, kNone, kNone, kNone, 0.38, kNone, "", "",
               "green US Forest Inventory species table; specific gravity 12 % left empty: 0.42 in "
               "the extract of Table 5-3a, 0.46 in the inventory table (conflict)",
               ""},
    SpeciesRow{"Spruce, Engelmann", kSoftwood, kNone, kNone, kNone, kNone, 0.33, 0.35, "", "",
               kTwoTables, ""},
    SpeciesRow{"Spruce, Norway", kSoftwood, 0.0019, 0.0039, kNone, kNone, kNone, kNone,
               kGermanTable, "", "", ""},
    SpeciesRow{"Spruce, red", kSoftwood, kNone, kNone, kNone, kNone, 0.37, 0.40, "", "", kTwoTables,
               ""},
    SpeciesRow{"Spruce, Sitka", kSoftwood, kNone, kNone, 4.3, 7.5, kNone, 0.40, "",
               "two copies of a wood-property database page",
               "at 12 % Table 5-3a of the Wood Handbook 2010; the inventory table prints 0.33 "
               "green and 0.36 at 12 % (conflict, so specific gravity green is left empty)",
               ""},
    SpeciesRow{"Spruce, white", kSoftwood, kNone, kNone, kNone, kNone, kNone, 0.36, "", "",
               "at 12 % Table 5-3a of the Wood Handbook 2010; the inventory table prints 0.37 "
               "green and 0.40 at 12 % (conflict, so specific gravity green is left empty)",
               ""},
    SpeciesRow{"Tamarack", kSoftwood, kNone, kNone, kNone, kNone, 0.49, 0.53, "", "", kTwoTables,
               ""},
    SpeciesRow{"Afrormosia", kTropical, 0.0018, 0.0032, 3.0, 6.4, kNone, kNone, kGermanTable,
               kTable4Imported, "", ""},
    SpeciesRow{"Albarco", kTropical, kNone, kNone, 2.8, 5.4, kNone, kNone, "", kTable4Imported, "",
               ""},
    SpeciesRow{"Andiroba", kTropical, kNone, kNone, 3.1, 7.6, kNone, kNone, "", kTable4Imported, "",
               ""},
    SpeciesRow{"Apitong / keruing", kTropical, kNone, kNone, 5.2, 10.9, kNone, kNone, "",
               kTable4Imported, "", ""},
    SpeciesRow{"Avodire", kTropical, kNone, kNone, 4.6, 6.7, kNone, kNone, "", kTable4Imported, "",
               ""},
    SpeciesRow{"Azobe / bongossi", kTropical, 0.0031, 0.0040, 8.4, 11.0, kNone, kNone, kGermanTable,
               kTable4Imported, "", ""},
    SpeciesRow{"Balata", kTropical, kNone, kNone, 6.3, 9.4, kNone, kNone, "", kTable4Imported, "",
               ""},
    SpeciesRow{"Courbaril / jatoba", kTropical, kNone, 0.00300, 4.5, 8.5, kNone, kNone,
               "tangential from two flooring-trade charts that name the Wood Handbook (agrees with "
               "the shrinkage); radial not found",
               "FPL species sheet after Tropical Timbers of the World (one source); a Suriname "
               "timber book prints 4.4 and 8.5",
               "", "basic specific gravity 0.71 to 0.82 on the FPL sheet"},
    SpeciesRow{"Ipe", kTropical, kNone, kNone, 6.6, 8.0, kNone, kNone, "",
               "FPL species sheet text, three copies agree (6.6 and 8.0)", "",
               "basic specific gravity 0.85 to 0.97 on the FPL sheet; a wood-property database "
               "prints 5.9 and 7.2"},
    SpeciesRow{"Iroko", kTropical, 0.0019, 0.0028, 3.3, 4.8, 0.56, kNone, kGermanTable,
               "a wood-property database page and a timber-merchant page agree", kSamePages,
               "another merchant page prints the shrinkages 2.8 and 3.8"},
    SpeciesRow{"Jarrah", kTropical, kNone, 0.00396, kNone, kNone, kNone, kNone, kChartsTangential,
               "", "", ""},
    SpeciesRow{"Lauan, white", kTropical, kNone, kNone, 4.0, 7.7, kNone, kNone, "", kTable4Imported,
               "", ""},
    SpeciesRow{"Limba", kTropical, kNone, kNone, 4.5, 6.2, kNone, kNone, "",
               "Wood Handbook 2010 Table 4-4 (one source; the columns run together in the copy, "
               "the row was matched by order)",
               "", ""},
    SpeciesRow{"Mahogany, African (Khaya)", kTropical, 0.0012, 0.0022, 2.5, 4.5, 0.44, kNone,
               kGermanTable, "Wood Handbook 2010 Table 4-4 (one source; row matched by order)",
               "green FPL species sheet for Khaya ivorensis and a second copy",
               "a French technical sheet prints total shrinkage 3.7 and 5.5"},
    SpeciesRow{"Mahogany, true (Swietenia)", kTropical, kNone, kNone, 3.0, 4.1, kNone, kNone, "",
               "Wood Handbook 2010 Table 4-4 and the FPL species sheet (two copies) agree", "",
               "basic specific gravity 0.40 to 0.68 on the FPL sheet; a wood-property database "
               "prints 2.9 and 4.3"},
    SpeciesRow{"Makore", kTropical, 0.0022, 0.0027, kNone, kNone, kNone, kNone, kGermanTable, "",
               "", ""},
    SpeciesRow{"Meranti, dark red", kTropical, 0.0011, 0.0025, kNone, kNone, kNone, kNone,
               kGermanTable, "", "", ""},
    SpeciesRow{"Meranti, yellow", kTropical, 0.0012, 0.0043, kNone, kNone, kNone, kNone,
               kGermanTable, "", "", ""},
    SpeciesRow{"Niangon", kTropical, 0.0018, 0.0033, kNone, kNone, kNone, kNone, kGermanTable, "",
               "", ""},
    SpeciesRow{"Okoume", kTropical, kNone, kNone, 4.6, 7.1, 0.35, kNone, "", kMerchantDatabase,
               "green from the same page as the shrinkage",
               "a row of Table 4-4 that by its place should be okoume reads 4.1 and 6.1"},
    SpeciesRow{"Padauk", kTropical, kNone, 0.00180, kNone, kNone, kNone, kNone, kChartsTangential,
               "", "", ""},
    SpeciesRow{"Purpleheart", kTropical, kNone, 0.00212, 3.8, 6.4, kNone, kNone, kChartsTangential,
               "a wood-property database page (one source); another sheet rounds to 3 and 6", "",
               "basic specific gravity 0.67 to 0.91 on the FPL sheet"},
    SpeciesRow{"Santos mahogany (cabreuva)", kTropical, kNone, 0.00238, kNone, kNone, kNone, kNone,
               kChartsTangential, "", "", ""},
    SpeciesRow{"Sapele", kTropical, 0.0024, 0.0032, 4.6, 7.4, 0.55, kNone, kGermanTable,
               "FPL species sheet after Tropical Timbers of the World (one source)",
               "green from the same sheet as the shrinkage", ""},
    SpeciesRow{"Sipo / utile", kTropical, 0.0020, 0.0025, kNone, kNone, kNone, kNone, kGermanTable,
               "", "", ""},
    SpeciesRow{"Spanish-cedar", kTropical, kNone, kNone, 4.2, 6.3, kNone, kNone, "", kMerchant, "",
               ""},
    SpeciesRow{"Teak", kTropical, 0.0016, 0.0026, 2.6, 5.3, 0.55, kNone, kGermanTable,
               kTwoMerchantsDatabase, kSamePages,
               "flooring-trade charts that name the Wood Handbook print a tangential coefficient "
               "of 0.00186 (one of them 0.00185)"},
    SpeciesRow{"Wenge", kTropical, 0.0022, 0.0034, kNone, kNone, kNone, kNone, kGermanTable, "", "",
               "flooring-trade charts that name the Wood Handbook print a tangential coefficient "
               "of 0.00201"},
};

// What the trade calls some of them, beside the other order of their names ("white oak").
constexpr std::array kAliases = {
    SpeciesAlias{"American ash", "Ash, white"},
    SpeciesAlias{"American cherry", "Cherry, black"},
    SpeciesAlias{"American red oak", "Oak, northern red"},
    SpeciesAlias{"American walnut", "Walnut, black"},
    SpeciesAlias{"American black walnut", "Walnut, black"},
    SpeciesAlias{"American white oak", "Oak, white"},
    SpeciesAlias{"balsam poplar", "Cottonwood, balsam poplar"},
    SpeciesAlias{"cabreuva", "Santos mahogany (cabreuva)"},
    SpeciesAlias{"cherry", "Cherry, black"},
    SpeciesAlias{"cucumbertree", "Magnolia, cucumbertree"},
    SpeciesAlias{"eastern redcedar", "Cedar, eastern redcedar"},
    SpeciesAlias{"ekki", "Azobe / bongossi"},
    SpeciesAlias{"English ash", "Ash, European"},
    SpeciesAlias{"English oak", "Oak, European"},
    SpeciesAlias{"European redwood", "Pine, Scots"},
    SpeciesAlias{"European whitewood", "Spruce, Norway"},
    SpeciesAlias{"hard maple", "Maple, sugar (hard maple)"},
    SpeciesAlias{"khaya", "Mahogany, African (Khaya)"},
    SpeciesAlias{"pecan", "Hickory, pecan"},
    SpeciesAlias{"red oak", "Oak, northern red"},
    SpeciesAlias{"Swietenia", "Mahogany, true (Swietenia)"},
    SpeciesAlias{"true hickory", "Hickory, shagbark (true hickory)"},
    SpeciesAlias{"tulip poplar", "Yellow-poplar"},
    SpeciesAlias{"tulipwood", "Yellow-poplar"},
    SpeciesAlias{"western red cedar", "Cedar, western redcedar"},
    SpeciesAlias{"western redcedar", "Cedar, western redcedar"},
};

}  // namespace

std::span<const SpeciesRow> species_rows() {
  return kRows;
}

std::span<const SpeciesAlias> species_aliases() {
  return kAliases;
}

}  // namespace haunch
