/** Published values of tables of freezing points and specific heats; see ../../published-values.ts for the form of a line. */
export const thermal = `
@ ashrae-thermal
§ Table 3
1|artichokes|freezing -1.2 °C ; specific-heat 3.90 kJ/kg·K
2|jerusalem-artichokes|freezing -2.5 °C ; specific-heat 3.63 kJ/kg·K
3|asparagus|freezing -0.6 °C ; specific-heat 4.03 kJ/kg·K
4|beans-snap|freezing -0.7 °C ; specific-heat 3.99 kJ/kg·K
5|beans-lima|freezing -0.6 °C ; specific-heat 3.52 kJ/kg·K
6|beets beets-topped|freezing -1.1 °C ; specific-heat 3.91 kJ/kg·K
7|broccoli|freezing -0.6 °C ; specific-heat 4.01 kJ/kg·K
8|brussels-sprouts|freezing -0.8 °C ; specific-heat 3.90 kJ/kg·K
9|cabbage|freezing -0.9 °C ; specific-heat 4.02 kJ/kg·K
10|carrots|freezing -1.4 °C ; specific-heat 3.92 kJ/kg·K
11|cauliflower|freezing -0.8 °C ; specific-heat 4.02 kJ/kg·K
12|celeriac|freezing -0.9 °C ; specific-heat 3.90 kJ/kg·K
13|celery|freezing -0.5 °C ; specific-heat 4.07 kJ/kg·K
14|collards|freezing -0.8 °C ; specific-heat 4.01 kJ/kg·K
15|sweet-corn|freezing -0.6 °C ; specific-heat 3.62 kJ/kg·K
16|cucumbers|freezing -0.5 °C ; specific-heat 4.09 kJ/kg·K
17|eggplant|freezing -0.8 °C ; specific-heat 4.02 kJ/kg·K
18|endive|freezing -0.1 °C ; specific-heat 4.07 kJ/kg·K
19|garlic|freezing -0.8 °C ; specific-heat 3.17 kJ/kg·K
20|ginger|specific-heat 3.75 kJ/kg·K
21|horseradish|freezing -1.8 °C ; specific-heat 3.70 kJ/kg·K
22|kale|freezing -0.5 °C ; specific-heat 3.82 kJ/kg·K
23|kohlrabi|freezing -1.0 °C ; specific-heat 4.02 kJ/kg·K
24|leeks|freezing -0.7 °C ; specific-heat 3.77 kJ/kg·K
25|lettuce-iceberg|freezing -0.2 °C ; specific-heat 4.09 kJ/kg·K
26|mushrooms|freezing -0.9 °C ; specific-heat 3.99 kJ/kg·K
@ thermal-table
§ table
1|beans-snap|freezing 30.7 °F ; specific-heat 0.95 Btu/lb·°F
2|carrots|freezing 29.5 °F ; specific-heat 0.94 Btu/lb·°F
3|sweet-corn|freezing 30.9 °F ; specific-heat 0.86 Btu/lb·°F
4|peas-green|freezing 30.9 °F ; specific-heat 0.9 Btu/lb·°F
5|brussels-sprouts|freezing 30.6 °F ; specific-heat 0.93 Btu/lb·°F
6|apples apples-chilling-sensitive|freezing 30.0 °F ; specific-heat 0.91 Btu/lb·°F
7|apricots|freezing 30.0 °F ; specific-heat 0.92 Btu/lb·°F
8|bananas-green|freezing 30.6 °F ; specific-heat 0.85 Btu/lb·°F
9|blackberries|freezing 30.6 °F ; specific-heat 0.93 Btu/lb·°F
10|blueberries|freezing 29.1 °F ; specific-heat 0.91 Btu/lb·°F
11|cherries-sour|freezing 28.9 °F ; specific-heat 0.92 Btu/lb·°F
12|cherries-sweet|freezing 28.8 °F ; specific-heat 0.89 Btu/lb·°F
13|cranberries|freezing 30.4 °F ; specific-heat 0.93 Btu/lb·°F
14|oranges-california-arizona oranges-florida-texas|freezing 30.6 °F ; specific-heat 0.91 Btu/lb·°F
15|peaches-nectarines|freezing 30.4 °F (peaches) ; specific-heat 0.93 Btu/lb·°F (peaches)
16|pears-bartlett pears-winter|freezing 29.1 °F ; specific-heat 0.91 Btu/lb·°F
17|raspberries|freezing 30.9 °F ; specific-heat 0.95 Btu/lb·°F
18|strawberries|freezing 30.6 °F ; specific-heat 0.96 Btu/lb·°F
19|cod|freezing 28.0 °F ; specific-heat 0.9 Btu/lb·°F
20|haddock|freezing 28.0 °F ; specific-heat 0.9 Btu/lb·°F
21|halibut|freezing 28.0 °F ; specific-heat 0.89 Btu/lb·°F
22|herring|freezing 28.0 °F [kippered] ; specific-heat 0.78 Btu/lb·°F [kippered]
23|mackerel|freezing 28.0 °F ; specific-heat 0.8 Btu/lb·°F
24|perch|freezing 28.0 °F ; specific-heat 0.89 Btu/lb·°F
25|pollock|freezing 28.0 °F ; specific-heat 0.88 Btu/lb·°F
26|salmon|freezing 28.0 °F (pink salmon) ; specific-heat 0.88 Btu/lb·°F (pink salmon)
27|beef|freezing 28.0 °F [carcass, choice] ; specific-heat 0.77 Btu/lb·°F [carcass, choice]
28|beef|freezing 28.9 °F [sirloin, lean] ; specific-heat 0.84 Btu/lb·°F [sirloin, lean]
@ ashrae-storage
§ Table 1
1|beets|life 10..14 days ; freezing -0.4 °C ; ethylene-production "Very low" ; ethylene-sensitivity "Low"
2|beets-topped|life 4 months ; freezing -0.9 °C ; ethylene-production "Very low" ; ethylene-sensitivity "Low"
3|apricots|life 1..3 weeks ; freezing -1.1 °C ; ethylene-production "Moderate" ; ethylene-sensitivity "Moderate"
4|apples|life 3..6 months ; freezing -1.5 °C ; ethylene-production "Very high" ; ethylene-sensitivity "High"
5|apples-chilling-sensitive|life 1..2 months ; freezing -1.5 °C ; ethylene-production "Very high" ; ethylene-sensitivity "High"
6|blackberries|storage -0.5..0 °C ; humidity 90..95 % ; life 3..6 days ; freezing -0.8 °C ; ethylene-production "Low" ; ethylene-sensitivity "Low"
7|apricots|storage -0.5..0 °C ; humidity 90..95 %
8|apples|storage -1 °C ; humidity 90..95 %
9|apples-chilling-sensitive|humidity 90..95 %
@ nc-state-heat
§ row of the goods
1|apples apples-chilling-sensitive|specific-heat 0.87 Btu/lb·°F [summer] ; chilling 30..40 °F [printed as lowest safe temperature]
2|apples apples-chilling-sensitive|specific-heat 0.87 Btu/lb·°F [fall] ; chilling 30..40 °F [printed as lowest safe temperature]
3|asparagus|specific-heat 0.94 Btu/lb·°F ; chilling 32..35 °F [printed as lowest safe temperature]
4|beans-lima|specific-heat 0.73 Btu/lb·°F ; chilling 37..41 °F [printed as lowest safe temperature]
5|beans-snap|specific-heat 0.91 Btu/lb·°F ; chilling 40..45 °F [printed as lowest safe temperature]
6|beets-topped|specific-heat 0.90 Btu/lb·°F
7|beets beets-topped|chilling 32 °F [printed as lowest safe temperature]
8|blueberries|specific-heat 0.86 Btu/lb·°F ; chilling 31..32 °F [printed as lowest safe temperature]
9|blackberries raspberries|specific-heat 0.87 Btu/lb·°F ; chilling 31..32 °F [printed as lowest safe temperature]
10|broccoli|specific-heat 0.92 Btu/lb·°F ; chilling 32 °F [printed as lowest safe temperature]
11|cabbage|specific-heat 0.94 Btu/lb·°F ; chilling 32 °F [printed as lowest safe temperature]
12|cantaloupe|specific-heat 0.94 Btu/lb·°F ; chilling 36..41 °F [printed as lowest safe temperature]
13|cucumbers|specific-heat 0.97 Btu/lb·°F ; chilling 50..55 °F [printed as lowest safe temperature]
14|grapes-table|specific-heat 0.86 Btu/lb·°F ; chilling 31..32 °F [printed as lowest safe temperature]
15|onions-green|specific-heat 0.91 Btu/lb·°F ; chilling 32 °F [printed as lowest safe temperature]
16|greens|specific-heat 0.90 Btu/lb·°F ; chilling 32 °F [printed as lowest safe temperature]
17|okra|specific-heat 0.92 Btu/lb·°F ; chilling 45..50 °F [printed as lowest safe temperature]
18|peaches-nectarines|specific-heat 0.91 Btu/lb·°F (peaches) ; chilling 31..32 °F [printed as lowest safe temperature]
19|peas-green|specific-heat 0.79 Btu/lb·°F ; chilling 36 °F [printed as lowest safe temperature]
20|peas-southern|specific-heat 0.73 Btu/lb·°F ; chilling 40 °F [printed as lowest safe temperature]
21|peppers-bell|specific-heat 0.94 Btu/lb·°F ; chilling 45 °F [printed as lowest safe temperature]
22|potatoes-table|specific-heat 0.84 Btu/lb·°F ; chilling 38 °F [printed as lowest safe temperature]
23|squash-summer|specific-heat 0.95 Btu/lb·°F ; chilling 41..50 °F [printed as lowest safe temperature]
24|strawberries|specific-heat 0.92 Btu/lb·°F ; chilling 32 °F [printed as lowest safe temperature]
25|sweet-corn|specific-heat 0.79 Btu/lb·°F ; chilling 32 °F [printed as lowest safe temperature]
26|tomatoes-mature-green|specific-heat 0.94 Btu/lb·°F
27|tomatoes-mature-green tomatoes-ripe|chilling 55..70 °F [printed as lowest safe temperature]
28|tomatoes-ripe|specific-heat 0.95 Btu/lb·°F
29|tomatoes-mature-green tomatoes-ripe|chilling 46..50 °F [printed as lowest safe temperature]
30|turnips|specific-heat 0.93 Btu/lb·°F ; chilling 32 °F [printed as lowest safe temperature]
31|watermelon|specific-heat 0.94 Btu/lb·°F ; chilling 40 °F [printed as lowest safe temperature]
@ engineering-manual
§ Table 7, p. 15
1|apples apples-chilling-sensitive|storage 30..40 °F ; humidity 90 % ; life 3..8 months ; freezing 29.3 °F ; specific-heat 0.87 Btu/lb·°F
2|apricots|storage 31..32 °F ; humidity 90 % ; life 1..2 weeks ; freezing 30.1 °F ; specific-heat 0.88 Btu/lb·°F
3|artichokes|storage 31..32 °F ; humidity 95 % ; life 2 weeks ; freezing 29.9 °F ; specific-heat 0.87 Btu/lb·°F
4|asparagus|storage 32..36 °F ; humidity 95 % ; life 2..3 weeks ; freezing 30.9 °F ; specific-heat 0.94 Btu/lb·°F
5|avocados-hass|storage 45..55 °F ; humidity 85..90 % ; life 2..4 weeks ; freezing 31.5 °F ; specific-heat 0.72 Btu/lb·°F
6|bananas-green|storage 55..65 °F ; humidity 85..90 % ; freezing 30.6 °F ; specific-heat 0.80 Btu/lb·°F
7|beans-snap|storage 40..45 °F ; humidity 90..95 % ; life 7..10 days ; freezing 30.7 °F ; specific-heat 0.91 Btu/lb·°F
8|beans-lima|storage 32..40 °F ; humidity 90 % ; life 1 weeks ; freezing 31.0 °F ; specific-heat 0.73 Btu/lb·°F
9|beets-topped|storage 32 °F ; humidity 95..100 % ; life 4..6 months ; freezing 30.1 °F ; specific-heat 0.90 Btu/lb·°F
10|blackberries|storage 31..32 °F ; humidity 95 % ; life 3 days ; freezing 30.5 °F ; specific-heat 0.88 Btu/lb·°F
11|blueberries|storage 31..32 °F ; humidity 90..95 % ; life 2 weeks ; freezing 29.7 °F ; specific-heat 0.86 Btu/lb·°F
12|broccoli|storage 32 °F ; humidity 95 % ; life 10..14 days ; freezing 29.0 °F ; specific-heat 0.92 Btu/lb·°F
13|brussels-sprouts|storage 32 °F ; humidity 95 % ; life 3..5 weeks ; freezing 30.5 °F ; specific-heat 0.88 Btu/lb·°F
14|cabbage|storage 32 °F ; humidity 95..100 % ; life 3..4 months ; freezing 30.4 °F ; specific-heat 0.94 Btu/lb·°F
15|carrots|storage 32 °F ; humidity 98..100 % ; life 5..9 months ; freezing 29.5 °F ; specific-heat 0.90 Btu/lb·°F
16|cauliflower|storage 32 °F ; humidity 95 % ; life 2..4 weeks ; freezing 29.0 °F ; specific-heat 0.93 Btu/lb·°F
17|celery|storage 32 °F ; humidity 95 % ; life 1..2 months ; freezing 31.1 °F ; specific-heat 0.95 Btu/lb·°F
18|cherries-sour|storage 31..32 °F ; humidity 90..95 % ; life 3..7 days ; freezing 29.0 °F ; specific-heat 0.87 Btu/lb·°F
19|cherries-sweet|storage 30..31 °F ; humidity 90..95 % ; life 2..3 weeks ; freezing 28.8 °F ; specific-heat 0.84 Btu/lb·°F
20|chocolate|storage 50..65 °F [coating] ; humidity 40..50 % [coating] ; life 2..3 months [coating] ; specific-heat 0.55 Btu/lb·°F [coating]
21|coconuts|storage 32..45 °F ; humidity 80..85 % ; life 1..2 months ; freezing 30.4 °F ; specific-heat 0.58 Btu/lb·°F
22|collards|storage 32 °F ; humidity 95 % ; life 10..14 days ; freezing 30.6 °F ; specific-heat 0.90 Btu/lb·°F
@ thermal-table-cengel
§ Foods
1|apples apples-chilling-sensitive|freezing -1.1 °C ; specific-heat 3.65 kJ/kg·K
2|lettuce-iceberg lettuce-leaf lettuce-romaine|freezing -0.2 °C (said of lettuce) ; specific-heat 4.02 kJ/kg·K (said of lettuce)
3|bananas-green|freezing -0.8 °C ; specific-heat 3.35 kJ/kg·K
4|milk|freezing -0.6 °C ; specific-heat 3.79 kJ/kg·K
5|oranges-california-arizona oranges-florida-texas|freezing -0.8 °C ; specific-heat 3.75 kJ/kg·K
6|broccoli|freezing -0.6 °C ; specific-heat 3.86 kJ/kg·K
7|potatoes-table|freezing -0.6 °C ; specific-heat 3.45 kJ/kg·K
8|salmon|freezing -2.2 °C ; specific-heat 2.98 kJ/kg·K
§ Foods, above freezing
9|beef|specific-heat 3.08 kJ/kg·K
@ earle
§ Appendix 7
1|apples apples-chilling-sensitive|freezing -2 °C [rounded to 1 °C] ; specific-heat 3.60 kJ/kg·K
2|bananas-green|freezing -2 °C [rounded to 1 °C] ; specific-heat 3.35 kJ/kg·K
3|grapefruit|freezing -2 °C [rounded to 1 °C] ; specific-heat 3.81 kJ/kg·K
4|peaches-nectarines|freezing -2 °C [rounded to 1 °C] ; specific-heat 3.78 kJ/kg·K (peaches)
5|pineapple|freezing -2 °C [rounded to 1 °C] ; specific-heat 3.68 kJ/kg·K
6|watermelon|freezing -2 °C [rounded to 1 °C] ; specific-heat 4.06 kJ/kg·K
7|asparagus|freezing -1 °C [rounded to 1 °C] ; specific-heat 3.93 kJ/kg·K
8|beans-snap|freezing -1 °C [rounded to 1 °C] ; specific-heat 3.81 kJ/kg·K
9|cabbage|freezing -1 °C [rounded to 1 °C] ; specific-heat 3.93 kJ/kg·K
10|carrots|freezing -1 °C [rounded to 1 °C] ; specific-heat 3.60 kJ/kg·K
11|sweet-corn|freezing -1 °C [rounded to 1 °C] ; specific-heat 3.35 kJ/kg·K
12|peas-green|freezing -1 °C [rounded to 1 °C] ; specific-heat 3.31 kJ/kg·K
13|tomatoes-mature-green tomatoes-ripe|freezing -1 °C [rounded to 1 °C] ; specific-heat 3.98 kJ/kg·K (said of tomatoes)
14|beef|freezing -2 °C [rounded to 1 °C] ; specific-heat 3.22 kJ/kg·K
15|fish-fresh|freezing -2 °C [rounded to 1 °C] ; specific-heat 3.18 kJ/kg·K
16|lamb|freezing -2 °C [rounded to 1 °C] ; specific-heat 3.18 kJ/kg·K
17|pork|freezing -2 °C [rounded to 1 °C] ; specific-heat 2.85 kJ/kg·K
18|veal|freezing -2 °C [rounded to 1 °C] ; specific-heat 2.97 kJ/kg·K
19|eggs-shell|freezing -3 °C [rounded to 1 °C] ; specific-heat 3.2 kJ/kg·K
20|milk|freezing -1 °C [rounded to 1 °C] ; specific-heat 3.9 kJ/kg·K
21|ice-cream|freezing -18..-3 °C
@ geankoplis
§ Table A.4-1
1|apples apples-chilling-sensitive|specific-heat 3.73..4.02 kJ/kg·K
2|asparagus|specific-heat 3.94 kJ/kg·K
3|cantaloupe|specific-heat 3.94 kJ/kg·K
4|carrots|specific-heat 3.81..3.94 kJ/kg·K
5|sweet-corn|specific-heat 3.32 kJ/kg·K
6|cucumbers|specific-heat 4.10 kJ/kg·K
7|eggs-shell|specific-heat 3.18 kJ/kg·K
8|ice-cream|specific-heat 3.27 kJ/kg·K
9|lamb|specific-heat 3.18 kJ/kg·K
10|milk|specific-heat 3.85 kJ/kg·K
11|oranges-california-arizona oranges-florida-texas|specific-heat 3.77 kJ/kg·K
12|peas-green|specific-heat 3.31 kJ/kg·K
13|plums|specific-heat 3.52 kJ/kg·K
14|pork|specific-heat 2.85 kJ/kg·K
15|potatoes-table|specific-heat 3.52 kJ/kg·K
16|poultry-fresh|specific-heat 3.31 kJ/kg·K
17|beans-snap|specific-heat 3.81 kJ/kg·K
18|tomatoes-mature-green tomatoes-ripe|specific-heat 3.98 kJ/kg·K (said of tomatoes)
19|veal|specific-heat 3.22 kJ/kg·K
20|butter|specific-heat 2.30 kJ/kg·K
`;
