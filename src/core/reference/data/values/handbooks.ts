/** Published values of USDA Agriculture Handbooks 66 and 668, by edition and copy; see ../../published-values.ts for the form of a line. */
export const handbooks = `
@ handbook-66-1968
§ Table L3.3
1|apples apples-chilling-sensitive|storage 30..40 °F ; humidity 90 % ; life 3..8 months ; freezing 29.3 °F ; specific-heat 0.87 Btu/lb·°F
2|apricots|storage 31..32 °F ; humidity 90 % ; life 1..2 weeks ; freezing 30.1 °F ; specific-heat 0.88 Btu/lb·°F
3|avocados-hass|storage 40..55 °F ; humidity 85..90 % ; life 2..4 weeks ; freezing 31.5 °F ; specific-heat 0.72 Btu/lb·°F
4|bananas-green|storage 56..58 °F ; humidity 90..95 % ; freezing 30.6 °F ; specific-heat 0.80 Btu/lb·°F
5|blackberries|storage 31..32 °F ; humidity 90..95 % ; life 2..3 days ; freezing 30.5 °F ; specific-heat 0.88 Btu/lb·°F
6|blueberries|storage 31..32 °F ; humidity 90..95 % ; life 2 weeks ; freezing 29.7 °F ; specific-heat 0.86 Btu/lb·°F
7|cranberries|storage 36..40 °F ; humidity 90..95 % ; life 2..4 months ; freezing 30.4 °F ; specific-heat 0.90 Btu/lb·°F
8|currants|storage 31..32 °F ; humidity 90..95 % ; life 1..2 weeks ; freezing 30.2 °F ; specific-heat 0.88 Btu/lb·°F
9|dewberries|storage 31..32 °F ; humidity 90..95 % ; life 2..3 days ; freezing 29.7 °F ; specific-heat 0.88 Btu/lb·°F
10|elderberries|storage 31..32 °F ; humidity 90..95 % ; life 1..2 weeks ; specific-heat 0.84 Btu/lb·°F
11|gooseberries|storage 31..32 °F ; humidity 90..95 % ; life 2..4 weeks ; freezing 30.0 °F ; specific-heat 0.91 Btu/lb·°F
12|loganberries|storage 31..32 °F ; humidity 90..95 % ; life 2..3 days ; freezing 29.7 °F ; specific-heat 0.86 Btu/lb·°F
13|raspberries|storage 31..32 °F ; humidity 90..95 % ; freezing 30.0 °F ; specific-heat 0.85 Btu/lb·°F
14|strawberries|storage 32 °F ; humidity 90..95 % ; life 5..7 days ; freezing 30.6 °F ; specific-heat 0.92 Btu/lb·°F
15|cherries-sour|storage 32 °F ; humidity 90..95 % ; life 3..7 days ; freezing 29.0 °F ; specific-heat 0.87 Btu/lb·°F
16|cherries-sweet|storage 30..31 °F ; humidity 90..95 % ; life 2..3 weeks ; freezing 28.8 °F ; specific-heat 0.84 Btu/lb·°F
17|coconuts|storage 32..35 °F ; humidity 80..85 % ; life 1..2 months ; freezing 30.4 °F ; specific-heat 0.58 Btu/lb·°F
18|figs-fresh|storage 31..32 °F ; humidity 85..90 % ; life 7..10 days ; freezing 27.6 °F ; specific-heat 0.82 Btu/lb·°F
19|grapefruit|storage 50 °F ; humidity 85..90 % ; freezing 30.0 °F ; specific-heat 0.91 Btu/lb·°F
20|grapes-table|storage 30..31 °F ; humidity 90..95 % ; life 3..6 months ; freezing 28.1 °F ; specific-heat 0.85 Btu/lb·°F
21|grapes-american|storage 31..32 °F ; humidity 85 % ; life 2..8 weeks ; freezing 29.7 °F ; specific-heat 0.86 Btu/lb·°F
22|guavas|storage 45..50 °F ; humidity 90 % ; life 2..3 weeks ; specific-heat 0.86 Btu/lb·°F
23|lemons|humidity 85..90 % ; life 1..6 months ; freezing 29.4 °F ; specific-heat 0.91 Btu/lb·°F
24|limes|storage 48..50 °F ; humidity 85..90 % ; life 6..8 weeks ; freezing 29.1 °F ; specific-heat 0.89 Btu/lb·°F
25|mangoes|storage 55 °F ; humidity 85..90 % ; life 2..3 weeks ; freezing 30.3 °F ; specific-heat 0.85 Btu/lb·°F
26|peaches-nectarines|storage 31..32 °F (nectarines) ; humidity 90 % (nectarines) ; life 2..4 weeks (nectarines) ; freezing 30.4 °F (nectarines) ; specific-heat 0.85 Btu/lb·°F (nectarines)
27|oranges-california-arizona oranges-florida-texas|storage 32 °F ; humidity 85..90 % ; life 8..12 weeks ; freezing 30.6 °F ; specific-heat 0.90 Btu/lb·°F
28|papaya|storage 45 °F ; humidity 85..90 % ; life 1..3 weeks ; freezing 30.4 °F ; specific-heat 0.93 Btu/lb·°F
29|peaches-nectarines|storage 31..32 °F (peaches) ; humidity 90 % (peaches) ; life 2..4 weeks (peaches) ; freezing 30.3 °F (peaches) ; specific-heat 0.91 Btu/lb·°F (peaches)
30|pears-bartlett pears-winter|storage 29..31 °F ; humidity 90..95 % ; life 2..7 months ; freezing 29.2 °F ; specific-heat 0.86 Btu/lb·°F
31|persimmons|storage 30 °F ; humidity 90 % ; life 3..4 months ; freezing 28.1 °F ; specific-heat 0.83 Btu/lb·°F
32|pineapple|storage 45..55 °F ; humidity 85..90 %
@ handbook-66-1954
§ table
1|asparagus|storage 32 °F ; humidity 90..95 % ; transport 32 °F ; life 1..2 weeks
2|beans-snap|storage 45..50 °F ; humidity 85..90 % ; transport 45..50 °F ; life 1..2 weeks
3|beans-lima|storage 32 °F ; humidity 90..95 % ; transport 32 °F ; life 2 weeks
4|beets-topped|storage 32 °F ; humidity 90..95 % ; transport 32 °F ; life 7..8 weeks
5|broccoli|storage 32 °F ; humidity 90..95 % ; transport 32 °F ; life 1..2 weeks
6|brussels-sprouts|storage 32 °F ; humidity 90..95 % ; transport 32 °F ; life 4 weeks
7|cabbage|storage 32 °F ; humidity 90..95 % ; transport 32 °F ; life 12..16 weeks
8|carrots|storage 32 °F ; humidity 90..95 % ; transport 32 °F ; life 16..20 weeks
9|cauliflower|storage 32 °F ; humidity 90..95 % ; transport 32 °F ; life 3..4 weeks
10|chinese-cabbage|storage 32 °F ; humidity 90..95 % ; transport 32 °F ; life 8..12 weeks
11|sweet-corn|storage 32 °F ; humidity 90..95 % ; transport 32 °F ; life 0.5..1 weeks
12|cucumbers|storage 50..55 °F ; humidity 90..95 % ; transport 50..55 °F ; life 2..4 weeks
13|eggplant|storage 50..55 °F ; humidity 85..90 % ; transport 50..55 °F ; life 1..2 weeks
14|kohlrabi|storage 32 °F ; humidity 90..95 % ; transport 32 °F ; life 4..8 weeks
15|lettuce-iceberg|storage 32 °F ; humidity 90..95 % ; transport 32 °F ; life 2..4 weeks
16|casaba|storage 50..55 °F ; humidity 85..90 % ; transport 50..55 °F ; life 4..8 weeks
17|crenshaw persian-melon|storage 45..50 °F ; humidity 85..90 % ; transport 45..50 °F ; life 1..2 weeks
18|honeydew|storage 50..55 °F ; humidity 85..90 % ; transport 50..55 °F ; life 2..4 weeks
19|cantaloupe|storage 45..50 °F ; humidity 85..90 % ; transport 45..50 °F ; life 1..2 weeks
20|okra|storage 45..50 °F ; humidity 85..90 % ; transport 45..50 °F ; life 1..2 weeks
21|onions-dry|storage 32 °F ; humidity 70..75 % ; transport 32 °F ; life 28 weeks
22|parsnips|storage 32 °F ; humidity 90..95 % ; transport 32 °F ; life 24..26 weeks
23|peas-green|storage 32 °F ; humidity 85..90 % ; transport 32 °F ; life 1..2 weeks
24|peppers-bell|storage 45..50 °F ; humidity 85..90 % ; transport 45..50 °F ; life 1..2 weeks
25|potatoes-table|storage 38..40 °F ; humidity 85..90 % ; transport 38..40 °F ; life 24..26 weeks
26|pumpkins|storage 50..55 °F ; humidity 70..75 % ; transport 50..55 °F ; life 12..26 weeks
27|radishes|storage 32 °F (spring, bunched) ; humidity 90..95 % (spring, bunched) ; transport 32 °F (spring, bunched) ; life 1..2 weeks (spring, bunched)
28|radishes|storage 32 °F [winter] ; humidity 90..95 % [winter] ; transport 32 °F [winter] ; life 8..16 weeks [winter]
29|rhubarb|storage 32 °F ; humidity 90..95 % ; transport 32 °F ; life 1..2 weeks
30|rutabagas|storage 32 °F ; humidity 90..95 % ; transport 32 °F ; life 8..16 weeks
31|spinach|storage 32 °F ; humidity 90..95 % ; transport 32 °F ; life 1..2 weeks
32|squash-summer|storage 45..50 °F ; humidity 85..95 % ; transport 45..50 °F ; life 0.5..1 weeks
33|squash-winter|storage 50..55 °F ; humidity 70..75 % ; transport 50..55 °F ; life 24..26 weeks
34|tomatoes-mature-green|storage 55..60 °F ; humidity 85..90 % ; transport 55..60 °F ; life 1..2 weeks
35|tomatoes-ripe|storage 45..55 °F ; humidity 85..90 % ; transport 45..55 °F ; life 1..2 weeks
36|turnips|storage 32 °F ; humidity 90..95 % ; transport 32 °F ; life 16..22 weeks
37|watermelon|storage 50..55 °F ; humidity 85..90 % ; transport 50..55 °F ; life 1..4 weeks
@ handbook-66-southern-pea
§ Optimum Storage Conditions
1|peas-southern|storage 4..5 °C = 39..41 °F (in the pod) ; humidity 95 % (in the pod) ; life 6..8 days (in the pod)
§ Chilling Sensitivity
2|peas-southern|chilling 5 °C = 41 °F ["probably sensitive"]
§ Respiration Rates
3|peas-southern|respiration 12.5..36.3 mg at 2 °C [whole pods] ; respiration 25.5..33.3 mg at 2 °C [shelled]
4|peas-southern|respiration 15.9..33.4 mg at 5 °C [whole pods]
5|peas-southern|respiration 144.8..150.9 mg at 20 °C [whole pods] ; respiration 89.8..161.2 mg at 20 °C [shelled]
@ handbook-66-watermelon
§ Chilling Sensitivity
1|watermelon|chilling 10 °C (for more than a few days)
@ handbook-668
§ compatibility Group 1
1|apples apples-chilling-sensitive parsnips apricots horseradish asian-pears kohlrabi pears-bartlett pears-winter acerola leeks persimmons beets-topped longan plums loquats pomegranates cashew-apple lychees mushrooms quinces coconuts radishes figs-fresh oranges-florida-texas rutabagas turnips|transport 0..2 °C = 32..36 °F ; humidity 90..95 %
2|grapes-table|transport 0..2 °C = 32..36 °F (without sulfur dioxide) ; humidity 90..95 % (without sulfur dioxide)
3|peaches-nectarines|transport 0..2 °C = 32..36 °F (peaches) ; transport 0..2 °C = 32..36 °F (nectarines) ; humidity 90..95 % (peaches) ; humidity 90..95 % (nectarines)
4|cherries-sweet|transport 0..2 °C = 32..36 °F (printed: cherries) ; humidity 90..95 % (printed: cherries)
§ compatibility Group 2
5|amaranth parsley fennel daikon artichokes endive peas-green asparagus escarole pomegranates bean-sprouts radicchio horseradish radishes belgian-endive jerusalem-artichokes rhubarb kiwifruit rutabagas bok-choy kohlrabi salsify broccoli greens brussels-sprouts leeks cabbage spinach carrots sweet-corn cauliflower mushrooms turnips celeriac onions-green water-chestnuts celery watercress parsnips beets beets-topped|transport 0..2 °C = 32..36 °F ; humidity 95..100 %
6|peas-edible-pod|transport 0..2 °C = 32..36 °F (snow peas) ; humidity 95..100 % (snow peas)
7|lettuce-iceberg lettuce-leaf lettuce-romaine|transport 0..2 °C = 32..36 °F (said of lettuce) ; humidity 95..100 % (said of lettuce)
§ compatibility Group 3
8|garlic onions-dry|transport 0..2 °C = 32..36 °F ; humidity 65..75 %
§ compatibility Group 4
9|cactus-leaves lemons tamarillos cactus-pears lychees tangelos caimito kumquats tangerines cantaloupe|transport 4.5 °C = 40 °F ; humidity 90..95 %
@ handbook-66-lemon
§ abstract
1|lemons|storage-or-transport 7..12 °C (depending on cultivar, maturity and duration) ; life ..6 months
2|lemons|humidity 85..95 %
3|lemons|chilling 7 °C
`;
