/** Published values of the trade, textbooks and web pages; see ../../published-values.ts for the form of a line. */
export const trade = `
@ container-table-agile
§ table
1|apples apples-chilling-sensitive|transport -1..4 °C ; humidity 90..95 % ; life 2..7 months
2|apricots|transport -0.5..0 °C ; humidity 90..95 % ; life 7..14 days
3|asparagus|transport 0..2 °C ; humidity 90..98 % ; life 14..21 days
4|avocados-hass|transport 4..13 °C ; humidity 85..90 % ; life 14..21 days
5|bananas-green|transport 13..14 °C ; humidity 85..95 % ; life 18..22 days
6|beans-snap|transport 4..7 °C ; humidity 95..98 % ; life 7..10 days
7|blueberries|transport -0.5..0 °C ; humidity 90..95 % ; life 10..14 days
8|cabbage|transport 0 °C (early crop) ; humidity 90..98 % (early crop) ; life 21..42 days [early crop]
9|cabbage|transport 0 °C (late crop) ; humidity 90..98 % (late crop) ; life 5..6 months [late crop]
10|carambola|transport 5..7 °C ; humidity 90 % ; life 21 days
11|carrots|transport 0 °C ; humidity 90..95 % ; life 28..180 days
12|cauliflower|transport 0 °C ; humidity 90..98 % ; life 14..21 days
13|celery|transport 0 °C ; humidity 90..95 % ; life 14..42 days
14|cherries-sweet|transport 0 °C ; humidity 90..95 % ; life 14..21 days
15|tangerines|transport 0..4 °C (c) ; humidity 85..90 % (c) ; life 7..50 days (c)
16|coconuts|transport 0..2 °C ; humidity 75..85 % ; life 1..2 months
17|cucumbers|transport 10..13 °C ; humidity 90..95 % ; life 10..14 days
18|eggplant|transport 8..12 °C ; humidity 90..95 % ; life 7..14 days
19|figs-fresh|transport -0.5..0 °C ; humidity 85..90 % ; life 7..10 days
20|garlic|transport 1 °C ; humidity 60..70 % ; life 6..7 months
21|ginger|transport 13 °C ; humidity 65..75 % ; life 4..6 months
22|grapefruit|transport 10..15 °C ; humidity 85..90 % ; life 1..2 months
23|grapes-table|transport 2 °C ; humidity 90..95 % ; life 1..5 months
24|kiwifruit|transport 0 °C ; humidity 90..95 % ; life 2..3 months
25|lemons|transport 11..15 °C ; humidity 85..95 % ; life 1..3 months
26|lettuce-iceberg|transport 0 °C ; humidity 90..95 % ; life 14..21 days
27|limes|transport 8..10 °C ; humidity 85..90 % ; life 14..35 days
28|lychees|transport 2..6 °C ; humidity 90..95 % ; life 21..35 days
29|tangerines|transport 4..8 °C (m) ; humidity 90..95 % (m) ; life 21..56 days (m)
30|mangoes|transport 10..14 °C ; humidity 85..95 % ; life 14..21 days
31|cantaloupe|transport 3..5 °C ; humidity 90..95 % ; life 7..14 days
@ container-table-apl
§ row of the goods
1|cabbage|life 21..42 days [green, early] ; transport 32..36 °F (green, early) ; freezing 30.4 °F
2|cabbage|life 90..180 days [green, late] ; transport 32..36 °F (green, late) ; freezing 30.4 °F
3|cantaloupe|life 12..21 days ; transport 37..41 °F ; freezing 29.9 °F
4|carrots|life 28..180 days ; transport 32..41 °F ; freezing 29.5 °F
5|cauliflower|life 21 days ; transport 33 °F ; freezing 30.6 °F
6|celeriac|life 180..240 days ; transport 33..34 °F ; freezing 30.3 °F
7|celery|life 35..49 days ; transport 33 °F ; freezing 31.1 °F
8|chard|life 10..14 days ; transport 34 °F ; freezing 31.9 °F
9|chayote|life 28..42 days ; transport 45 °F ; freezing 31 °F
10|chicory|life 14..28 days ; transport 33..34 °F
11|chives|life 14..21 days ; transport 33..34 °F
12|collards|life 10..14 days ; transport 33..34 °F ; freezing 30.6 °F
13|sweet-corn|life 7 days ; transport 33..34 °F ; freezing 30.9 °F
14|cucumbers|life 10..14 days ; transport 50..55 °F ; freezing 30.1 °F
15|daikon|life 60..120 days ; transport 34 °F
16|taro|life 42..140 days ; transport 50 °F
17|eggplant|life 10..14 days ; transport 50..54 °F ; freezing 30.6 °F
18|endive|life 14..28 days ; transport 34 °F ; freezing 31.9 °F
@ cargohb-plums
§ infobox
1|plums|freezing -2..-1 °C (depending on soluble solids)
2|plums|transport 0 °C
3|plums|humidity 90..95 %
4|plums|life 3..6 weeks
5|plums|ethylene-production "Medium"
6|plums|ethylene-sensitivity "High"
§ Cooling and storage
7|plums|chilling-band 2..7 °C (internal breakdown)
@ cargohb-potatoes
§ infobox
1|potatoes-table|freezing -0.8 °C
2|potatoes-table|transport 7 °C (table)
3|potatoes-table|transport 4 °C [seed]
4|potatoes-table|transport 10 °C [processing]
5|potatoes-table|humidity 90..95 %
6|potatoes-table|life 2..12 months (table/processing)
7|potatoes-table|ethylene-production "Very low"
8|potatoes-table|ethylene-sensitivity "Medium"
§ Cooling and Storage
9|potatoes-table|chilling 0..2 °C ["risk of freezing or chilling injury"]
@ cargohb-sweetpotatoes
§ infobox
1|sweet-potatoes|freezing -1.9 °C
2|sweet-potatoes|transport 12.5..15 °C
3|sweet-potatoes|humidity 85..90 %
4|sweet-potatoes|life 6..10 months
5|sweet-potatoes|ethylene-production "Very low"
6|sweet-potatoes|ethylene-sensitivity "Low"
@ bluebook-peas
§ Storage & Handling
1|peas-green|storage 32..34 °F
2|peas-green|humidity 90..98 %
3|peas-green peas-edible-pod|life 7..10 days
§ Optimum Transit Temp.
4|peas-green|transport 32 °F
§ Storage & Handling
5|peas-green|ethylene-sensitivity "sensitive"
6|peas-edible-pod|storage 33..35 °F
7|peas-edible-pod|humidity 50 %
8|peas-edible-pod|ethylene-sensitivity "moderately sensitive"
@ bluebook-potatoes
§ Optimum Transit Temp.
1|potatoes-early|transport 50..60 °F
2|potatoes-table|transport 40..50 °F (late)
@ bluebook-lemons
§ Optimum Transit Temp.
1|lemons|transport 45..55 °F
@ bluebook-limes
§ Optimum Transit Temp.
1|limes|transport 48..50 °F
@ bluebook-cucumbers
§ Optimum Transit Temp.
1|cucumbers|transport 50..55 °F
@ flowers-page
§ text
1|cut-flowers|storage 0..1 °C
2|cut-flowers|humidity 95..99 %
3|cut-flowers-tropical|storage 10 °C
4|cut-flowers|storage 0.556..1.67 °C [tulips, narcissus, hyacinths (UMass)]
5|cut-flowers|storage 2.22..4.44 °C [gladioli (Kansas State)]
6|cut-flowers|storage 0.556..1.67 °C [roses]
@ cargohb-mushrooms
§ infobox
1|mushrooms|freezing -0.6 °C
2|mushrooms|transport 0..1 °C
3|mushrooms|humidity 95 %
4|mushrooms|life 1 weeks ["approx."]
5|mushrooms|ethylene-production "Very low"
6|mushrooms|ethylene-sensitivity "Medium"
@ chocolate-textbook
§ chapter 60
1|chocolate|storage 18..20 °C = 64..68 °F ; humidity 60 % ; life "up to a year"
@ cargohb-pears
§ infobox
1|pears-bartlett pears-winter|transport -1.0..-0.5 °C ; freezing -1.6 °C ; humidity 90..95 % ; ethylene-production "High" ; ethylene-sensitivity "High"
2|pears-bartlett|life 1..3 months
3|pears-winter|life 4..6 months (Anjou)
@ cargohb-peaches
§ infobox
1|peaches-nectarines|freezing -0.9 °C (peaches) ; ethylene-production "High" (peaches) ; ethylene-sensitivity "High" (peaches)
@ cargohb-spinach
§ text
1|spinach|freezing -0.3 °C
§ infobox
2|spinach|ethylene-production "Very low" ; ethylene-sensitivity "High"
@ cargohb-limes
§ infobox
1|limes|transport 8..9 °C ; freezing -1.6 °C ; humidity 90 % ; life 1..2 months ; ethylene-production "Very Low" ; ethylene-sensitivity "Moderate"
`;
