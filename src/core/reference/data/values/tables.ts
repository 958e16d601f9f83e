/** Published values of tables of universities and handbooks; see ../../published-values.ts for the form of a line. */
export const tables = `
@ cantwell-common
§ row of the commodity
1|acerola|storage 0 °C = 32 °F ; humidity 85..90 % ; life 6..8 weeks ; freezing -1.4 °C = 29.4 °F
2|african-horned-melon|storage 13..15 °C = 50..60 °F ; humidity 90 % ; life 6 months ; ethylene-production "L" ; ethylene-sensitivity "M"
3|amaranth|storage 0..2 °C = 32..36 °F ; humidity 95..100 % ; life 10..14 days ; ethylene-production "VL" ; ethylene-sensitivity "M"
4|fennel|storage 0..2 °C = 32..36 °F ; humidity 90..95 % ; life 2..3 weeks ; freezing -1.1 °C = 30.1 °F
5|apples|storage -1.1 °C = 30.0 °F ; humidity 90..95 % ; life 3..6 months ; freezing -1.5 °C = 29.3 °F ; ethylene-production "VH" ; ethylene-sensitivity "H"
6|apples-chilling-sensitive|storage 4 °C = 40 °F ; humidity 90..95 % ; life 1..2 months ; freezing -1.5 °C = 29.3 °F ; ethylene-production "VH" ; ethylene-sensitivity "H"
7|apricots|storage -0.5..0 °C = 31..32 °F ; humidity 90..95 % ; life 1..3 weeks ; freezing -1.1 °C = 30.1 °F ; ethylene-production "M" ; ethylene-sensitivity "H"
8|artichokes|storage 0 °C = 32 °F ; humidity 95..100 % ; life 2..3 weeks ; freezing -1.2 °C = 29.9 °F ; ethylene-production "VL" ; ethylene-sensitivity "L"
9|chinese-artichoke|storage 0 °C = 32 °F ; humidity 90..95 % ; life 1..2 weeks ; ethylene-production "VL" ; ethylene-sensitivity "VL"
10|jerusalem-artichokes|storage -0.5..0 °C = 31..32 °F ; humidity 90..95 % ; life 4 months ; freezing -2.5 °C = 27.5 °F ; ethylene-production "VL" ; ethylene-sensitivity "L"
11|arugula|storage 0 °C = 32 °F ; humidity 95..100 % ; life 7..10 days ; ethylene-production "VL" ; ethylene-sensitivity "H"
12|asian-pears|storage 1 °C = 34 °F ; humidity 90..95 % ; life 4..6 months ; freezing -1.6 °C = 29.2 °F ; ethylene-production "H" ; ethylene-sensitivity "H"
13|asparagus|storage 2.5 °C = 36 °F (green, white) ; humidity 95..100 % (green, white) ; life 2..3 weeks (green, white) ; freezing -0.6 °C = 30.9 °F (green, white) ; ethylene-production "VL" (green, white) ; ethylene-sensitivity "M" (green, white)
14|atemoya|storage 13 °C = 55 °F ; humidity 85..90 % ; life 4..6 weeks ; ethylene-production "H" ; ethylene-sensitivity "H"
15|avocados-hass|storage 3..7 °C = 37..45 °F (Fuerte, Hass) ; humidity 85..90 % (Fuerte, Hass) ; life 2..4 weeks (Fuerte, Hass) ; freezing -1.6 °C (Fuerte, Hass; the copy misprints 29.9 °F) ; ethylene-production "H" (Fuerte, Hass) ; ethylene-sensitivity "H" (Fuerte, Hass)
16|avocados-hass|storage 13 °C = 55 °F [cv Fuchs, Pollock] ; humidity 85..90 % [cv Fuchs, Pollock] ; life 2 weeks [cv Fuchs, Pollock] ; freezing -0.9 °C = 30.4 °F [cv Fuchs, Pollock] ; ethylene-production "H" [cv Fuchs, Pollock] ; ethylene-sensitivity "H" [cv Fuchs, Pollock]
17|avocados-hass|storage 4 °C = 40 °F [cv Lula, Booth-1] ; humidity 90..95 % [cv Lula, Booth-1] ; life 4..8 weeks [cv Lula, Booth-1] ; freezing -0.9 °C = 30.4 °F [cv Lula, Booth-1] ; ethylene-production "H" [cv Lula, Booth-1] ; ethylene-sensitivity "H" [cv Lula, Booth-1]
@ cantwell-scientific
§ row of the commodity
1|okra|storage 7..10 °C = 45..50 °F ; humidity 90..95 % ; life 7..10 days ; freezing -1.8 °C = 28.7 °F ; ethylene-production "L" ; ethylene-sensitivity "M"
2|sapodilla|storage 15..20 °C = 59..68 °F ; humidity 85..90 % ; life 2 weeks ; ethylene-production "H" ; ethylene-sensitivity "H"
3|kiwifruit|storage 0 °C = 32 °F ; humidity 90..95 % ; life 3..5 months ; freezing -0.9 °C = 30.4 °F ; ethylene-production "L" ; ethylene-sensitivity "H"
4|mushrooms|storage 0 °C = 32 °F ; humidity 90 % ; life 7..14 days ; freezing -0.9 °C = 30.4 °F ; ethylene-production "VL" ; ethylene-sensitivity "M"
5|langsat|storage 11..14 °C = 52..58 °F ; humidity 85..90 % ; life 2 weeks
6|onions-dry|storage 0 °C = 32 °F ; humidity 65..70 % ; life 1..8 months ; freezing -0.8 °C = 30.6 °F ; ethylene-production "VL" ; ethylene-sensitivity "L"
7|onions-green|storage 0 °C = 32 °F ; humidity 95..100 % ; life 3 weeks ; freezing -0.9 °C = 30.4 °F ; ethylene-production "L" ; ethylene-sensitivity "H"
8|shallots|storage 0..2.5 °C = 32..36 °F ; humidity 65..70 % ; freezing -0.7 °C = 30.7 °F ; ethylene-production "L" ; ethylene-sensitivity "L"
9|leeks|storage 0 °C = 32 °F ; humidity 95..100 % ; life 2 months ; freezing -0.7 °C = 30.7 °F ; ethylene-production "VL" ; ethylene-sensitivity "M"
10|garlic|storage -1..0 °C = 30..32 °F ; humidity 65..70 % ; life 6..7 months ; freezing -2.0 °C = 28.4 °F ; ethylene-production "VL" ; ethylene-sensitivity "L"
11|chives|storage 0 °C = 32 °F ; humidity 95..100 % ; life 2..3 weeks ; freezing -0.9 °C = 30.4 °F ; ethylene-production "L" ; ethylene-sensitivity "H"
12|amaranth|storage 0..2 °C = 32..36 °F ; humidity 95..100 % ; life 10..14 days ; ethylene-production "VL" ; ethylene-sensitivity "M"
13|cashew-apple|storage 0..2 °C = 32..36 °F ; humidity 85..90 % ; life 5 weeks
14|pineapple|storage 7..13 °C = 45..55 °F ; humidity 85..90 % ; life 2..4 weeks ; freezing -1.1 °C = 30.0 °F ; ethylene-production "L" ; ethylene-sensitivity "L"
15|dill|storage 0 °C = 32 °F ; humidity 95..100 % ; life 1..2 weeks ; freezing -0.7 °C = 30.7 °F ; ethylene-production "VL" ; ethylene-sensitivity "H"
16|cherimoya|storage 13 °C = 55 °F ; humidity 90..95 % ; life 2..4 weeks ; freezing -2.2 °C = 28.0 °F ; ethylene-production "H" ; ethylene-sensitivity "H"
17|soursop|storage 13 °C = 55 °F ; humidity 85..90 % ; life 1..2 weeks ; ethylene-production "H" ; ethylene-sensitivity "H"
18|atemoya|storage 13 °C = 55 °F ; humidity 85..90 % ; life 2..4 weeks ; ethylene-production "H" ; ethylene-sensitivity "H"
19|sugar-apple|storage 7 °C = 45 °F ; humidity 85..90 % ; life 4 weeks ; ethylene-production "H" ; ethylene-sensitivity "H"
@ produce-degradation
§ Table 20.1, p. 602
1|apples apples-chilling-sensitive|storage -1..4 °C ; humidity 90..95 % ; life 2..4 months
2|apricots|storage -0.5..0 °C ; humidity 90..95 % ; life 1..2 weeks ; respiration 6 mg at 0 °C
3|avocados-hass|storage 5..12 °C ; humidity 85..95 % ; life 3..6 weeks ; respiration 35 mg at 5 °C ; respiration 105 mg at 10 °C
4|bananas-green|storage 13..14 °C ; humidity 90..95 % ; respiration 140 mg at 15 °C
5|blackberries|storage -0.5..0 °C ; humidity 90.. % ; life 2..14 days ; respiration 19 mg at 0 °C
6|blueberries|storage -0.5..0 °C ; humidity 90.. % ; life 2 weeks ; respiration 6 mg at 0 °C
7|cranberries|storage 2 °C ; humidity 90..95 % ; life 2..4 months ; respiration 4 mg at 0 °C
8|raspberries|storage -0.5..0 °C ; humidity 90.. % ; life 2..5 days ; respiration 17 mg at 2 °C
9|strawberries|storage 0 °C ; humidity 90..95 % ; life 7 days ; respiration 16 mg at 0 °C
10|cherries-sweet|storage -1..0 °C ; humidity 95.. % ; life 2..4 weeks ; respiration 8 mg at 0 °C
11|figs-fresh|storage -1..0 °C ; humidity 90..95 % ; life 1..2 weeks ; respiration 6 mg at 0 °C
12|grapes-table|storage -1..0 °C ; humidity 90..95 % ; respiration 3 mg at 0 °C
13|grapes-muscadine|storage -0.5..0 °C ; humidity 90.. % ; respiration 10 mg at 2 °C
14|grapes-american|storage -0.5..0 °C ; humidity 85..90 % ; respiration 3 mg at 0 °C
15|grapefruit|storage 12..15 °C ; humidity 95 % ; life 6 weeks ; respiration ..10 mg at 15 °C
16|kiwifruit|storage 0 °C ; humidity 90..95 % ; life 4..5 months ; respiration 3 mg at 0 °C
17|lemons|storage 7..12 °C ; humidity 85..95 % ; life 6 months ; respiration 11 mg at 10 °C
18|limes|storage 10 °C ; humidity 95 % ; life 8 weeks ; respiration ..10 mg at 10 °C
§ Table 20.1 (continued), p. 603
19|mangoes|storage 10..13 °C ; humidity 85..90 % ; life 14..28 days ; respiration 35 mg at 10 °C
20|peaches-nectarines|storage -1..0 °C (nectarines) ; humidity 90..95 % (nectarines) ; life 14..18 days (nectarines) ; respiration 35 mg at 0 °C (nectarines)
21|oranges-florida-texas|storage 0..1 °C ; humidity 85..90 % ; life 12 weeks ; respiration 4 mg at 0 °C
22|oranges-california-arizona|storage 3..8 °C ; humidity 90..95 % ; life 12 weeks
23|passion-fruit-yellow|storage 7..10 °C ; humidity 90..95 % ; life 2 weeks ; respiration 44 mg at 5 °C
24|passion-fruit-purple|storage 3..5 °C ; humidity 90..95 % ; life 3..5 weeks
25|peaches-nectarines|storage -1..0 °C (peaches) ; humidity 90..95 % (peaches) ; life 14..28 days (peaches) ; respiration 35 mg at 0 °C (peaches)
26|pears-bartlett pears-winter|storage -1 °C ; humidity 90..94 % ; life 60..90 days
27|persimmons|storage -1..1 °C ; humidity 90..95 % ; life 3 months ; respiration 6 mg at 0 °C
28|pineapple|storage 7..12 °C ; humidity 85..95 % ; life 14..20 days ; respiration 6 mg at 10 °C
29|plums|storage -1..0 °C ; humidity 90..95 % ; life 14..28 days ; respiration 33 mg at 0 °C
30|casaba crenshaw canary-melon|storage 10 °C ; humidity 90..95 % ; life 3 weeks
31|honeydew|storage 7 °C ; humidity 95 % ; life 7..10 days ; respiration 14 mg at 10 °C
32|watermelon|storage 10..15 °C ; humidity 90 % ; life 2..3 weeks ; respiration 8 mg at 10 °C
§ Table 20.2, p. 604
33|asparagus|storage 0..2 °C ; humidity 95..99 % ; life 14..21 days ; respiration 60 mg at 0 °C
34|beans-snap|storage 5..7.5 °C ; humidity 95..100 % ; life 8..12 days ; respiration 34 mg at 5 °C
35|beets|storage 0 °C ; humidity 98 % ; life 10..14 days
36|beets-topped|storage 1..2 °C ; humidity 98 % ; respiration 5 mg at 0 °C
37|broccoli|storage 0 °C ; humidity 98..100 % ; life 2..3 weeks ; respiration 21 mg at 0 °C
38|brussels-sprouts|storage 0 °C ; humidity 95..100 % ; life 3..5 weeks ; respiration 40 mg at 0 °C
39|cabbage|storage 0 °C ; humidity 98..100 % ; life 3..6 months ; respiration 5 mg at 0 °C
40|carrots|storage 0 °C ; humidity 98..100 % ; life 7..9 months ; respiration 15 mg at 0 °C
41|cauliflower|storage 0 °C ; humidity 95..98 % ; life 3 weeks ; respiration 17 mg at 0 °C
42|celery|storage 0 °C ; humidity 95 % ; life 5..7 weeks ; respiration 15 mg at 0 °C
43|sweet-corn|storage 0 °C ; humidity 95..98 % ; life 4..6 days ; respiration 41 mg at 0 °C
44|cucumbers|storage 10..12.5 °C ; humidity 95 % ; life ..14 days ; respiration 26 mg at 15 °C
45|eggplant|storage 10..12 °C ; humidity 90..95 % ; life 14 days ; respiration 69 mg at 12.5 °C
46|endive|storage 0 °C ; humidity 95..100 % ; life 2..3 weeks ; respiration 45 mg at 0 °C
47|garlic|storage -1..0 °C ; humidity 60..70 % ; life 9 months ; respiration 8 mg at 0 °C
48|greens|storage 0 °C ; humidity 95..98 % ; life 2 weeks
49|spinach|respiration 21 mg at 0 °C
50|jicama|storage 12.5..15 °C ; humidity 80..90 % ; life 2..4 months ; respiration 14 mg at 15 °C
§ Table 20.2 (continued), p. 606
51|tomatillos|storage 5..10 °C ; humidity 80..90 % ; life ..3 weeks ; respiration 16 mg at 10 °C
52|tomatoes-mature-green|storage 19..21 °C ; humidity 90..95 % ; respiration 22 mg at 15 °C
53|tomatoes-ripe|storage 13 °C ; humidity 90..95 % ; life 7..28 days ; respiration 35 mg at 20 °C
54|turnips|storage 0 °C ; humidity 90..95 % ; life 4..5 months ; respiration 8 mg at 0 °C
§ Table 20.5, p. 624
55|apples-chilling-sensitive|chilling 2..3 °C = 36..38 °F
56|asparagus|chilling 0..2 °C = 32..36 °F
57|avocados-hass|chilling 4.5..13 °C = 40..55 °F
58|bananas-green|chilling 11.5..13 °C = 53..56 °F
59|beans-lima|chilling 1..4.5 °C = 34..40 °F
60|beans-snap|chilling 7 °C = 45 °F
61|cranberries|chilling 2 °C = 36 °F
62|cucumbers|chilling 7 °C = 45 °F
63|eggplant|chilling 7 °C = 45 °F
64|ginger|chilling 7 °C = 45 °F
65|guavas|chilling 4.5 °C = 40 °F
66|grapefruit|chilling 10 °C = 50 °F
67|lemons|chilling 11..13 °C = 52..55 °F
68|limes|chilling 7..9 °C = 45..48 °F
69|mangoes|chilling 10..13 °C = 50..55 °F
70|cantaloupe|chilling 2..5 °C = 36..41 °F
71|honeydew|chilling 7..10 °C = 45..50 °F
72|casaba crenshaw persian-melon|chilling 7..10 °C = 45..50 °F
73|okra|chilling 7 °C = 45 °F
74|oranges-california-arizona oranges-florida-texas|chilling 3 °C = 38 °F
75|papaya|chilling 7 °C = 45 °F
76|passion-fruit-purple passion-fruit-yellow|chilling 10 °C = 50 °F
77|peppers-bell|chilling 7 °C = 45 °F
78|pineapple|chilling 7..10 °C = 45..50 °F
79|pomegranates|chilling 4.5 °C = 40 °F
80|potatoes-table|chilling 38 °F (the °C column prints 32)
@ new-england
§ Table 16
1|asparagus|storage-or-transport 32..36 °F ; humidity 95 % ; life 1..2 weeks ; top-ice "N"
2|basil|storage-or-transport 46..50 °F ; humidity 90..95 % ; life 4..7 days ; top-ice "N"
3|beans-lima|storage-or-transport 38..42 °F ; humidity 90..95 % ; life 7..10 days ; top-ice "N"
4|beans-snap|storage-or-transport 40..45 °F ; humidity 90..95 % ; life 7..10 days ; top-ice "N"
5|beets|storage-or-transport 32 °F ; life 1..2 weeks ; top-ice "R"
6|broccoli|storage-or-transport 32 °F ; humidity 90..95 % ; life 1..2 weeks ; top-ice "E"
7|brussels-sprouts|storage-or-transport 32 °F ; humidity 90..95 % ; life 3..5 weeks ; top-ice "R"
8|cabbage|storage-or-transport 32 °F ; humidity 90..95 % ; life 3..6 weeks ; top-ice "N"
9|chinese-cabbage|storage-or-transport 32 °F ; humidity 90..95 % ; life 4..8 weeks ; top-ice "R"
10|carrots|storage-or-transport 32 °F ; humidity 90..95 % ; life 6..7 months ; top-ice "N"
11|carrots-bunched|storage-or-transport 32 °F ; humidity 90..95 % ; life 1 months ; top-ice "E"
12|cauliflower|storage-or-transport 32 °F ; humidity 90..95 % ; life 2..4 weeks ; top-ice "R"
13|celery|storage-or-transport 32 °F ; humidity 90..95 % ; life 2..3 weeks ; top-ice "R"
14|collards kale|storage-or-transport 32 °F ; humidity 90..95 % ; life 1..2 weeks ; top-ice "R"
15|cucumbers|storage-or-transport 50 °F ; humidity 90..95 % ; life 1..2 weeks ; top-ice "N"
16|eggplant|storage-or-transport 50 °F ; humidity 90..95 % ; life 1 weeks ; top-ice "N"
17|endive escarole|storage-or-transport 32 °F ; humidity 90..95 % ; life 2..3 weeks ; top-ice "R"
18|kohlrabi|storage-or-transport 32 °F ; humidity 90..95 % ; life 2..4 weeks ; top-ice "R"
19|horseradish|storage-or-transport 30..32 °F ; humidity 90..95 % ; life 1 years ; top-ice "N"
20|leeks|storage-or-transport 32 °F ; humidity 90..95 % ; life 1..3 months ; top-ice "R"
21|lettuce-iceberg|storage-or-transport 32..36 °F ; humidity 95 % ; life 2..3 weeks ; top-ice "N"
22|lettuce-leaf|storage-or-transport 32..36 °F (leaf and bibb) ; humidity 95 % (leaf and bibb) ; life 1 weeks (leaf and bibb) ; top-ice "R"
23|lettuce-romaine|storage-or-transport 32..36 °F ; humidity 95 % ; life 1..2 weeks ; top-ice "R"
24|cantaloupe|storage-or-transport 36..40 °F (3/4 slip) ; humidity 85..90 % (3/4 slip) ; life 1..2 weeks (3/4 slip) ; top-ice "R"
25|cantaloupe|storage-or-transport 32..36 °F (full slip) ; humidity 85..90 % (full slip) ; life 4..7 days (full slip) ; top-ice "R"
26|okra|storage-or-transport 45..50 °F ; humidity 95 % ; life 1 weeks ; top-ice "N"
27|onions-dry|storage-or-transport 32 °F ; humidity 65..70 % ; life 1..8 months ; top-ice "N"
28|onions-green|storage-or-transport 32 °F ; humidity 90..95 % ; life 7..10 days ; top-ice "N"
29|parsley|storage-or-transport 32 °F ; humidity 95 % ; life 1..2 months ; top-ice "E"
30|parsnips|storage-or-transport 32 °F ; humidity 90..95 % ; life 2..6 months ; top-ice "N"
31|peas-green|storage-or-transport 32 °F ; humidity 90..95 % ; life 1..2 weeks ; top-ice "E"
§ Table 16 (older stored copy)
32|peppers-bell|storage-or-transport 45..50 °F ; top-ice "N" ; humidity 90..95 % ; life 2..3 weeks
33|potatoes-early|storage-or-transport 40 °F ; top-ice "N" ; humidity 90 % ; life 2..4 months
@ crop-post-harvest
§ Table 14.8
1|cantaloupe|ethylene-production "10 to 100 µL/kg·h" ; respiration 9..10 mg at 5 °C
2|honeydew|ethylene-production "Very low" ; respiration 8 mg at 5 °C
3|cucumbers|ethylene-production "0.6 µL/kg·h at 20 °C" ; respiration 23..29 mg at 10 °C [slicing]
4|watermelon|respiration 6..9 mg at 10 °C
5|squash-summer|respiration 65..68 mg at 10 °C
6|squash-winter|respiration 88..110 mg at 12 °C [buttercup]
7|chayote|respiration 4 mg at 5 °C
8|watermelon|ethylene-production "< 1.0 µL/kg·h at 20 °C"
9|squash-summer|ethylene-production "< 1.0 µL/kg·h at 20 °C"
@ jfst-table-4
§ Table 4
1|apples apples-chilling-sensitive|storage 0..4 °C ; humidity 90..95 % ; life 2..6 months
2|beets beets-topped|storage 0 °C ; humidity 95..99 %
3|cabbage|storage 0 °C ; humidity 95..99 % ; life 5..6 months
4|carrots|storage 0 °C ; humidity 98..99 % ; life 5..9 months
5|cauliflower|storage 0 °C ; humidity 95 % ; life 2..4 weeks
6|cucumbers|storage 10..13 °C ; humidity 90..95 %
7|eggplant|storage 8..10 °C ; humidity 90..95 %
8|lettuce-iceberg lettuce-leaf lettuce-romaine|storage 1 °C (said of lettuce) ; humidity 95..99 % (said of lettuce)
9|leeks|storage 0 °C ; humidity 95 % ; life 1..3 months
10|oranges-california-arizona oranges-florida-texas|storage 0..4 °C ; humidity 85..90 % ; life 3..4 months
11|pears-bartlett pears-winter|storage 0 °C ; humidity 90..95 % ; life 2..5 months
12|pumpkins|storage 10..13 °C ; humidity 70..75 %
13|spinach|storage 0 °C ; humidity 95 % ; life 1..2 weeks
14|tomatoes-mature-green tomatoes-ripe|storage 13..21 °C (said of tomatoes) ; humidity 85..90 % (said of tomatoes)
`;
