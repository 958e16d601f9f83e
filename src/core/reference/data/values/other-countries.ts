/** Published values of authorities and research bodies outside the United States; see ../../published-values.ts for the form of a line. */
export const otherCountries = `
@ south-africa-pome
§ Temperature
1|apples apples-chilling-sensitive pears-bartlett pears-winter|storage -0.5 °C [South African commercial cultivars]
§ Relative humidity (RH)
2|apples apples-chilling-sensitive pears-bartlett pears-winter|humidity 90..95 % [South African commercial cultivars]
@ western-australia
§ Table 1
1|apricots|storage -0.5..0 °C ; humidity 85..95 % ; life 1..3 weeks ; storage 0 °C [short-term]
2|avocados-hass|storage 0..2 °C [ripe] ; storage 4.5..13 °C (green) ; humidity 90..95 % [ripe] ; humidity 85..95 % (green) ; life 10 days [ripe] ; life 2..4 weeks (green) ; storage 2 °C [short-term]
3|blackberries|storage -0.5..0 °C ; humidity 85..100 % ; life 2..3 days ; storage 0 °C [short-term]
4|blueberries|storage -0.5..0 °C ; humidity 90..100 % ; life 2 weeks ; storage 0 °C [short-term]
5|boysenberries|storage 0 °C ; humidity 90..100 % ; life 2..3 days ; storage 0 °C [short-term]
6|carambola|storage 10..15 °C ; humidity 90 % ; life 5 weeks
7|cherries-sour|storage 0 °C ; humidity 90..95 % ; life 3..7 days ; storage 0 °C [short-term]
8|cherries-sweet|storage -1..0 °C ; humidity 85..95 % ; life 2..4 weeks ; storage 0 °C [short-term]
9|sapodilla|storage 15 °C ; humidity 85..95 % ; life 2 weeks
10|coconuts|storage 0..2 °C ; humidity 80..95 % ; life 4..8 weeks
11|cranberries|storage 2..4.5 °C ; humidity 90..100 % ; life 12..16 weeks
12|custard-apple|storage 10..20 °C ; humidity 85..90 % ; life 2..3 weeks ; storage 10 °C [short-term]
13|currants|storage -0.5..0 °C ; humidity 90..95 % ; life 1..2 weeks
14|dates|storage 0..32 °C ; humidity ..75 % ; life 24..48 weeks
15|duku|storage 10 °C ; humidity 85..90 % ; life 2 weeks
16|durian|storage 10 °C ; humidity 90 % ; life 1 weeks
17|feijoa|storage 0..4 °C ; life 4..5 weeks ; storage 4 °C [short-term]
18|figs-fresh|storage -1..0 °C ; humidity 85..95 % ; life 1..3 weeks ; storage 0 °C [short-term]
19|gooseberries|storage -0.5..0 °C ; humidity 90..95 % ; life 1..4 weeks
20|grapefruit|storage 10..16 °C ; humidity 85..90 % ; life 4..10 weeks ; storage 13 °C [short-term]
21|grapes-table|storage -1..0 °C ; humidity 85..95 % ; life 12..24 weeks ; storage 0 °C [short-term]
22|guavas|storage 7..10 °C ; humidity 90 % ; life 2..3 weeks
23|kiwifruit|storage -0.5..0 °C ; humidity 90..95 % ; life 8..16 weeks ; storage 0 °C [short-term]
24|langsat|storage 11..14 °C ; humidity 85..90 % ; life 2 weeks
25|limes|storage 7..10 °C ; humidity 85..90 % ; life 4..10 weeks ; storage 10 °C [short-term]
26|loganberries|storage -0.5..0 °C ; humidity 90..100 % ; life 2..3 days ; storage 0 °C [short-term]
27|lychees|storage 0..2 °C ; humidity 90..100 % ; life 3..8 days ; storage 0 °C [short-term]
§ Table 2
28|artichokes|storage 0 °C ; humidity 90..100 % ; life 3..4 weeks ; storage 0 °C [short-term]
29|jerusalem-artichokes|storage -0.5..0 °C ; humidity 90..95 % ; life 8..20 weeks
30|asparagus|storage 0..2.5 °C ; humidity 85..100 % ; life 2..4 weeks ; storage 2 °C [short-term]
31|beans-snap|storage 4..10 °C ; humidity 85..100 % ; life 1..3 weeks ; storage 7 °C [short-term]
32|beans-lima|storage 0..4.5 °C ; humidity 90 % ; life 1..2 weeks
33|beets|storage 0 °C ; humidity 95 % ; life 1..2 weeks
34|beets-topped|storage 0 °C ; humidity 90..100 % ; life 4..20 weeks
35|beets beets-topped|storage 0 °C [short-term]
36|broccoli|storage 0 °C ; humidity 90..100 % ; life 1..2 weeks ; storage 0 °C [short-term]
37|brussels-sprouts|storage 0 °C ; humidity 90..100 % ; life 2..5 weeks ; storage 0 °C [short-term]
38|cabbage|storage 0 °C (early) ; humidity 90..95 % (early) ; life 3..6 weeks [early] ; storage 0 °C [short-term]
39|cabbage|storage 0 °C (late) ; humidity 90..100 % (late) ; life 4..16 weeks [late] ; storage 0 °C [short-term]
40|chinese-cabbage|storage 0 °C ; humidity 90..95 % ; life 4..8 weeks
41|peppers-bell|storage 7..10 °C (capsicum) ; humidity 90..95 % (capsicum) ; life 2..3 weeks (capsicum) ; storage 7 °C [short-term]
42|carrots-bunched|storage 0 °C ; humidity 90..100 % ; life 2..3 weeks
43|carrots|storage 0 °C ; humidity 90..100 % ; life 16..20 weeks
44|carrots|storage 0 °C [immature, topped] ; humidity 90..100 % [immature, topped] ; life 4..6 weeks [immature, topped]
45|cauliflower|storage 0 °C ; humidity 90..100 % ; life 2..4 weeks ; storage 0 °C [short-term]
46|celeriac|storage 0 °C ; humidity 90..95 % ; life 12..16 weeks
47|celery|storage -0.5..0 °C ; humidity 90..100 % ; life 4..16 weeks ; storage 0 °C [short-term]
48|chayote|storage 10.5 °C ; humidity 90..95 % ; life 10..12 weeks
49|collards|storage 0 °C ; humidity 90..95 % ; life 10..14 days
50|sweet-corn|storage -0.5..0 °C ; humidity 85..100 % ; life 4..14 days ; storage 0 °C [short-term]
51|cucumbers|storage 7..12 °C ; humidity 85..100 % ; life 7..10 days ; storage 7 °C [short-term]
52|eggplant|storage 7..10 °C ; humidity 90..95 % ; life 7..10 days ; storage 7 °C [short-term]
53|endive|storage 0 °C ; humidity 90..100 % ; life 3 weeks ; storage 0 °C [short-term]
54|garlic|storage 0 °C ; humidity 65..75 % ; life 24..28 weeks ; storage 0 °C [short-term]
55|ginger|storage 13 °C ; humidity 65 % ; life 24 weeks
56|greens|storage 0 °C ; humidity 90..100 % ; life 1..2 weeks ; storage 0 °C [short-term]
57|horseradish|storage -1..0 °C ; humidity 90..100 % ; life 40..48 weeks
58|kale|storage 0 °C ; humidity 90..95 % ; life 10..14 days
59|kohlrabi|storage 0 °C ; humidity 90..100 % ; life 2..4 weeks
60|leeks|storage 0 °C ; humidity 90..100 % ; life 4..12 weeks
61|lettuce-iceberg lettuce-leaf lettuce-romaine|storage 0 °C (said of lettuce) ; humidity 90..100 % (said of lettuce) ; life 1..2 weeks (said of lettuce)
62|cantaloupe|storage 0..7 °C ; humidity 85..90 % ; life 1..2 weeks ; storage 5 °C [short-term]
63|honeydew|storage 7..10 °C ; humidity 85..90 % ; life 3..4 weeks
64|mushrooms|storage 0 °C ; humidity 85..100 % ; life 3..10 days ; storage 0 °C [short-term]
65|okra|storage 7..10 °C ; humidity 90..95 % ; life 7..14 days ; storage 7 °C [short-term]
66|onions-dry|storage 0 °C ; humidity 65..75 % ; life 4..32 weeks ; storage 0 °C [short-term]
67|parsley|storage 0 °C ; humidity 90..100 % ; life 4..8 weeks ; storage 0 °C [short-term]
68|parsnips|storage 0..1 °C ; humidity 90..100 % ; life 8..24 weeks ; storage 0 °C [short-term]
69|peas-green|storage -0.5..0 °C ; humidity 85..100 % ; life 1..3 weeks ; storage 0 °C [short-term]
70|peppers-hot|storage 0..10 °C [dry] ; humidity 60..70 % [dry] ; life 24 weeks [dry]
71|peppers-bell|storage 7..10 °C (sweet) ; humidity 85..90 % (sweet) ; life 8..21 days (sweet)
72|potatoes-table|storage 13 °C [chipping] ; humidity 90..95 % [chipping] ; life 4..8 weeks [chipping]
@ postharvest-australia
§ table, Best storage conditions
1|bok-choy|storage 2 °C (buk choy) ; humidity 95..100 % (buk choy) ; life 3 weeks (buk choy) ; life 2..3 weeks [buk choy; at 5 °C, estimated]
2|choy-sum|storage 2 °C ; humidity 95..100 % ; life 3 weeks ; life 10..14 days [at 5 °C, estimated]
3|gai-lan|storage 2 °C ; humidity 95..100 % ; life 2 weeks ; life 7..10 days [at 5 °C, estimated]
4|bok-choy|storage 2 °C (pak choy) ; humidity 95..100 % (pak choy) ; life 3 weeks (pak choy) ; life 10..14 days [pak choy; at 5 °C, estimated]
5|chinese-cabbage|storage 0 °C ; humidity 95..100 % ; life 3 months ; life 3 months [wombok; at 5 °C, estimated]
6|spinach|storage 2 °C (baby) ; humidity 95..100 % (baby) ; life 3 weeks (baby) ; life 2..3 weeks [baby; at 5 °C, estimated]
7|beans-snap|storage 7..10 °C ; humidity 90..95 % ; life 7..12 days ; life 6..8 days [at 5 °C, estimated]
8|broccoli|storage 0 °C ; humidity 95..100 % ; life 6 weeks ; life 2..3 weeks [at 5 °C, estimated]
9|brussels-sprouts|storage 0 °C ; humidity 95..100 % ; life 4 weeks ; life 1..3 weeks [at 5 °C, estimated]
10|cabbage|storage 0 °C ; humidity 95..100 % ; life 8 weeks ; life 2..3 weeks [at 5 °C, estimated]
11|peppers-bell|storage 2..5 °C (green) ; humidity 90..95 % (green) ; life 2..3 weeks (green) ; life 2..3 weeks [green; at 5 °C, estimated]
12|peppers-bell|storage 1..4 °C (red) ; humidity 90..95 % (red) ; life 3..4 weeks (red) ; life 2..3 weeks [red; at 5 °C, estimated]
13|carrots|storage 0 °C ; humidity 95..100 % ; life 6 weeks ; life 2..3 weeks [at 5 °C, estimated]
14|cauliflower|storage 0 °C ; humidity 95..100 % ; life 3 weeks ; life 7..12 days [at 5 °C, estimated]
15|celery|storage 2 °C ; humidity 95..100 % ; life 6 weeks ; life 2..4 weeks [at 5 °C, estimated]
16|cucumbers|storage 6..9 °C (green, field) ; humidity 90..95 % (green, field) ; life 2..4 weeks (green, field) ; life 2..3 weeks [green, field; at 5 °C, estimated]
17|cucumbers|storage 10..12 °C (Lebanese) ; humidity 90..95 % (Lebanese) ; life 10..16 days (Lebanese) ; life 5..10 days [Lebanese; at 5 °C, estimated]
18|eggplant|storage 10..14 °C ; humidity 90..95 % ; life 10..16 days ; life 6..12 days [at 5 °C, estimated]
19|onions-green|storage 0 °C ; humidity 95..100 % ; life 3 weeks ; life 2..3 weeks [at 5 °C, estimated]
20|kale|storage 0 °C ; humidity 95..100 % ; life 3 weeks ; life 7..10 days [at 5 °C, estimated]
21|leeks|storage 0 °C ; humidity 95..100 % ; life 12 weeks ; life 3..4 weeks [at 5 °C, estimated]
22|lettuce-iceberg|storage 2 °C (hearting) ; humidity 95..100 % (hearting) ; life 3 weeks (hearting) ; life 1..2 weeks [hearting; at 5 °C, estimated]
23|lettuce-leaf|storage 2 °C ; humidity 95..100 % ; life 2 weeks ; life 1..2 weeks [at 5 °C, estimated]
24|parsnips|storage 0 °C ; humidity 95..100 % ; life 6 weeks ; life 2..3 weeks [at 5 °C, estimated]
25|peas-edible-pod|storage 0 °C ; humidity 90..95 % ; life 3 weeks ; life 2..3 weeks [at 5 °C, estimated]
26|pumpkins|storage 20 °C ; humidity 70..80 % ; life 2..3 months ; life 2..3 weeks [at 5 °C, estimated]
27|arugula|storage 2 °C ; humidity 95..100 % ; life 3 weeks ; life 2..3 weeks [at 5 °C, estimated]
28|chard|storage 0 °C ; humidity 95..100 % ; life 2 weeks ; life 7..10 days [silverbeet; at 5 °C, estimated]
29|squash-summer|storage 8..10 °C (pattypan) ; humidity 90..95 % (pattypan) ; life 8..12 days (pattypan) ; life 6..10 days [pattypan; at 5 °C, estimated]
30|sweet-corn|storage 0 °C ; humidity 95..100 % ; life 2 weeks ; life 3..5 days [at 5 °C, estimated]
31|sweet-potatoes|storage 16..18 °C ; humidity 80..90 % ; life 2 months ; life 7..10 days [at 5 °C, estimated]
32|squash-summer|storage 6..10 °C (zucchini) ; humidity 90..95 % (zucchini) ; life 10..16 days (zucchini) ; life 8..12 days [zucchini; at 5 °C, estimated]
@ tropical-fruits
§ Table 5.4
1|acerola|storage 0 °C ; humidity 85..90 % ; life 50..58 days
2|atemoya|storage 13 °C ; humidity 85..90 % ; life 28..42 days
3|avocados-hass|storage 5 °C [Mexican] ; humidity 85..90 % [Mexican] ; life 14..28 days [Mexican]
4|avocados-hass|storage 10 °C [West Indian] ; humidity 85..90 % [West Indian] ; life 14..28 days [West Indian]
5|bananas-green|storage 14 °C ; humidity 90..95 % ; life 7..28 days
6|breadfruit|storage 13 °C ; humidity 90..95 % ; life 14..40 days
7|carambola|storage 1 °C ; humidity 90..95 % ; life 21..28 days
8|cherimoya|storage 13 °C ; humidity 85..90 % ; life 14..28 days
9|durian|storage 4 °C ; humidity 85..90 % ; life 42..56 days
10|guavas|storage 10 °C ; humidity 90..95 % ; life 14..21 days
11|jackfruit|storage 13 °C ; humidity 90..95 % ; life 14..45 days
12|langsat|storage 11 °C ; humidity 90..95 % ; life 10..15 days
13|lychees|storage 1 °C ; humidity 90..95 % ; life 21..35 days
14|longan|storage 2 °C ; humidity 90..95 % ; life 21..35 days
15|mangoes|storage 10..12 °C ; humidity 85..90 % ; life 14..25 days
16|mangosteen|storage 13 °C ; humidity 85..90 % ; life 14..25 days
17|papaya|storage 8..12 °C ; humidity 85..90 % ; life 7..21 days
18|passion-fruit-purple passion-fruit-yellow|storage 12 °C ; humidity 85..90 % ; life 14..21 days
19|pineapple|storage 10 °C ; humidity 90..95 % ; life 14..36 days
20|rambutan|storage 12 °C ; humidity 90..95 % ; life 7..21 days
21|sugar-apple|storage 7 °C ; humidity 85..90 % ; life 28 days
`;
