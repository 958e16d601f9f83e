/** Published values of fact sheets of UC Davis on vegetables and herbs; see ../../published-values.ts for the form of a line. */
export const ucDavisVegetables = `
@ ucd-pea
§ Optimum Temperature
1|peas-edible-pod|storage 0 °C = 32 °F ; humidity 95..98 %
2|peas-edible-pod|life ..2 weeks
§ Rates of Respiration
3|peas-edible-pod|respiration 15..24 mL at 0 °C ["an approximation based on values for unshelled garden peas"]
4|peas-edible-pod|respiration 27..38 mL at 5 °C ["an approximation based on values for unshelled garden peas"]
5|peas-edible-pod|respiration 34..59 mL at 10 °C ["an approximation based on values for unshelled garden peas"]
6|peas-edible-pod|respiration 89..101 mL at 15 °C ["an approximation based on values for unshelled garden peas"]
7|peas-edible-pod|respiration 123..180 mL at 20 °C ["an approximation based on values for unshelled garden peas"]
§ Rates of Ethylene Production
8|peas-edible-pod|ethylene-production "< 0.1 µL/kg·h"
§ Responses to Ethylene
9|peas-edible-pod|ethylene-sensitivity "moderately sensitive"
@ ucd-potato-early
§ Physical Disorders, Freezing Injury
1|potatoes-early|freezing -0.8 °C
§ Rates of Respiration (digits reversed by the right-to-left text)
2|potatoes-early|respiration 6..8 mL at 5 °C
3|potatoes-early|respiration 7..11 mL at 10 °C
4|potatoes-early|respiration 7..16 mL at 15 °C
5|potatoes-early|respiration 9..23 mL at 20 °C
§ Maturity Indices
6|potatoes-early|storage 4 °C = 39 °F (cured 8 days at 15 °C) ; humidity 95..98 % (cured) ; life ..5 months (cured)
§ Optimum Storage Conditions
7|potatoes-early|life 3..5 weeks
@ ucd-sweetpotato
§ Optimum Temperature
1|sweet-potatoes|storage 12.5..15 °C ; humidity 90.. %
2|sweet-potatoes|life 6..10 months
3|sweet-potatoes|chilling 12.5 °C
@ ucd-radish
§ Optimum Temperature
1|radishes|storage 32 °F
2|radishes|life 7..14 days (with tops) ; life 21..28 days [topped]
3|daikon|life 3..4 months
§ Optimum Relative Humidity
4|radishes|humidity 95..100 %
@ ucd-tomato
§ Optimum Temperature
1|tomatoes-mature-green|storage 12.5..15 °C = 55..60 °F
2|tomatoes-ripe|storage 10..12.5 °C = 50..55 °F (light red)
3|tomatoes-ripe|storage 7..10 °C = 44..50 °F (firm-ripe, 3-5 days)
4|tomatoes-mature-green|life ..14 days
@ ucd-herbs
§ Freezing Injury
1|dill|freezing -0.7 °C = 30.7 °F
2|chives|freezing -0.9 °C = 30.4 °F
3|parsley|freezing -1.1 °C = 30.0 °F
§ Optimum Temperature
4|cilantro chervil chives dill epazote corn-salad marjoram mint mitsuba oregano parsley sage tarragon thyme|storage 0 °C = 32 °F (said of most herbs)
5|cilantro chervil chives dill epazote corn-salad marjoram mint mitsuba oregano parsley sage tarragon thyme|life 3 weeks (said of most herbs) ; life 2 weeks ["most herbs"; at 5 °C]
6|basil shiso|storage 10.. °C = 50.. °F ; chilling 10 °C = 50 °F
7|basil shiso|life 1..2 weeks
@ ucd-herbs-copy
§ Optimum Temperature and Relative Humidity
1|cilantro dill chives parsley mint thyme chervil epazote marjoram mitsuba oregano sage tarragon savory|humidity 95.. % (said of most herbs)
@ uc-small-farm-news
§ text
1|thyme oregano rosemary mint sage parsley cilantro savory marjoram dill tarragon|storage 32 °F
2|thyme oregano rosemary mint sage parsley cilantro savory marjoram dill tarragon|life 3..4 weeks
@ ucd-mushroom
§ Optimum Temperature
1|mushrooms|storage 0..1.5 °C = 32..35 °F ; life 5..7 days [at 1.5 °C] ; life 2 days [at 4.5 °C]
§ Optimum Relative Humidity
2|mushrooms|humidity 95..98 %
§ Rates of Respiration
3|mushrooms|respiration 14..22 mL at 0 °C
4|mushrooms|respiration 35 mL at 5 °C
5|mushrooms|respiration 50 mL at 10 °C
6|mushrooms|respiration 132..158 mL at 20 °C
§ Responses to Ethylene
7|mushrooms|ethylene-sensitivity "not significantly impacted"
§ Rates of Ethylene Production
8|mushrooms|ethylene-production ">0.1 µl/kg·hr at 20 °C"
@ ucd-mushroom-old
§ Rates of Respiration
1|mushrooms|respiration 28..44 mg at 0 °C
2|mushrooms|respiration 71 mg at 5 °C
3|mushrooms|respiration 100 mg at 10 °C
4|mushrooms|respiration 264..316 mg at 20 °C
@ ucd-onion-dry
§ Optimum Temperature
1|onions-dry|storage 0 °C = 32 °F ; life 6..9 months [pungent]
2|onions-dry|life 0.5..1 months [mild]
§ Optimum Relative Humidity
3|onions-dry|humidity 65..70 % (storage)
4|onions-dry|humidity 75..80 % [for scale colour development]
@ ucd-answer-onions
§ answer
1|onions-dry|storage 0 °C (long term) ; humidity 65..70 % (long term)
§ question
2|onions-dry|storage 55..65 °F [7-day]
@ ucd-sweetcorn
§ Optimum Temperature
1|sweet-corn|storage 0..1.5 °C = 32..34 °F ; humidity 95..98 %
2|sweet-corn|life ..7 days (standard, including transit)
3|sweet-corn|life ..21 days [supersweet]
@ ucd-lettuce-romaine
§ Optimum Temperature
1|lettuce-romaine|storage 0 °C = 32 °F
2|lettuce-romaine|life 21 days (around)
3|lettuce-romaine|life 14 days [at 5 °C, about, without ethylene]
§ Freezing Injury
4|lettuce-romaine|freezing -0.2 °C = 31.7 °F
§ Relative Humidity
5|lettuce-romaine|humidity 95.. %
§ Responses to Ethylene
6|lettuce-romaine|ethylene-sensitivity "sensitive"
§ Rates of Ethylene Production
7|lettuce-romaine|ethylene-production "very low"
§ Rates of Respiration
8|lettuce-romaine|respiration 9..12 mL at 5 °C ; respiration 15..20 mL at 10 °C ; respiration 19..25 mL at 15 °C ; respiration 30..38 mL at 20 °C
@ ucd-lettuce-crisphead
§ Optimum Temperature
1|lettuce-iceberg|storage 0 °C = 32 °F ; life 21..28 days
2|lettuce-iceberg|life 14 days [at 5 °C, without ethylene]
§ Freezing Injury
3|lettuce-iceberg|freezing -0.2 °C = 31.7 °F
§ Optimum Relative Humidity
4|lettuce-iceberg|humidity 95.. %
§ Responses to Ethylene
5|lettuce-iceberg|ethylene-sensitivity "extremely sensitive"
§ Rates of Respiration
6|lettuce-iceberg|respiration 3..8 mL at 0 °C ; respiration 6..10 mL at 5 °C ; respiration 11..20 mL at 10 °C ; respiration 16..23 mL at 15 °C ; respiration 25..30 mL at 20 °C
@ ucd-broccoli
§ Optimum Temperature
1|broccoli|storage 0 °C = 32 °F ; life 21..28 days
2|broccoli|life 14 days [at 5 °C] ; life 5 days [at 10 °C, about]
§ Freezing Injury
3|broccoli|freezing -1.0..-0.6 °C = 30..30.6 °F
§ Optimum Relative Humidity
4|broccoli|humidity 95.. %
§ Responses to Ethylene
5|broccoli|ethylene-sensitivity "extremely sensitive"
§ Rates of Respiration
6|broccoli|respiration 10..11 mL at 0 °C ; respiration 16..18 mL at 5 °C ; respiration 38..43 mL at 10 °C ; respiration 80..90 mL at 15 °C ; respiration 140..160 mL at 20 °C
@ ucd-celery
§ Optimum Temperature
1|celery|storage 0 °C = 32 °F ; life 5..7 weeks
2|celery|storage 0..2 °C = 32..36 °F (commonly stored)
§ Optimum Relative Humidity
3|celery|humidity 98..100 %
§ Responses to Ethylene
4|celery|ethylene-sensitivity "not very sensitive"
§ Rates of Respiration
5|celery|respiration 3 mL at 0 °C ; respiration 5 mL at 5 °C ; respiration 12 mL at 10 °C ; respiration 17 mL at 15 °C ; respiration 32 mL at 20 °C
@ ucd-cauliflower
§ Optimum Temperature
1|cauliflower|storage 0 °C = 32 °F
2|cauliflower|life ..3 weeks
§ Optimum Relative Humidity
3|cauliflower|humidity 95..98 %
§ Responses to Ethylene
4|cauliflower|ethylene-sensitivity "highly sensitive"
§ Rates of Respiration
5|cauliflower|respiration 8..9 mL at 0 °C ; respiration 10..11 mL at 5 °C ; respiration 16..18 mL at 10 °C ; respiration 21..25 mL at 15 °C ; respiration 37..42 mL at 20 °C
@ ucd-spinach
§ Optimum Temperature
1|spinach|storage 0 °C = 32 °F ; life ..2 weeks
§ Optimum Temperature and Relative Humidity
2|spinach|humidity 95..98 %
§ Responses to Ethylene
3|spinach|ethylene-sensitivity "highly sensitive"
§ Rates of Respiration
4|spinach|respiration 9..11 mL at 0 °C ; respiration 17..29 mL at 5 °C ; respiration 41..69 mL at 10 °C ; respiration 67..111 mL at 15 °C ; respiration 86..143 mL at 20 °C
@ ucd-asparagus
§ Optimum Temperature
1|asparagus|storage 0..2 °C = 32..35.6 °F
2|asparagus|life 14..21 days (at 2 °C)
3|asparagus|chilling 0 °C [after 10 to 12 days in air]
§ Freezing Injury
4|asparagus|freezing -0.6 °C = 30.9 °F
§ Optimum Relative Humidity
5|asparagus|humidity 95..100 %
§ Rates of Respiration
6|asparagus|respiration 14..40 mL at 0 °C ; respiration 28..68 mL at 5 °C ; respiration 45..152 mL at 10 °C ; respiration 80..168 mL at 15 °C ; respiration 138..250 mL at 20 °C
@ ucd-cucumber
§ Optimum Temperature
1|cucumbers|storage 10..12.5 °C = 50..55 °F
2|cucumbers|life ..14 days
3|cucumbers|transport 7.2 °C = 45 °F [commonly used, will result in chilling injury after 2-3 days]
§ Chilling Injury
4|cucumbers|chilling 10 °C = 50 °F (for more than a day to 3 days)
§ Freezing Injury
5|cucumbers|freezing -0.5 °C = 31 °F
§ Optimum Relative Humidity
6|cucumbers|humidity 95 %
§ Responses to Ethylene
7|cucumbers|ethylene-sensitivity "highly sensitive"
§ Rates of Respiration
8|cucumbers|respiration 12..15 mL at 10 °C ; respiration 12..17 mL at 15 °C ; respiration 7..24 mL at 20 °C
@ ucd-cabbage
§ Optimum Temperature
1|cabbage|storage 0 °C = 32 °F
2|cabbage|life 3..6 weeks [early crop] ; life ..6 months [late crop]
3|cabbage|storage -0.5 °C = 31 °F [late crop, sometimes recommended]
4|chinese-cabbage|storage 0..2.5 °C = 32..36 °F ; life 2..6 months
§ Optimum Temperature and Relative Humidity
5|cabbage chinese-cabbage|humidity 95.. %
§ Freezing Injury
6|cabbage|freezing -0.9 °C = 30.4 °F
7|chinese-cabbage|freezing -0.6 °C = 31 °F
@ ucd-garlic
§ Optimum Temperature
1|garlic|storage -1..0 °C = 30..32 °F ; humidity 60..70 % ; life 9.. months
§ Rates of Respiration
2|garlic|respiration 2..6 mL at 0 °C ; respiration 4..12 mL at 5 °C ; respiration 6..18 mL at 10 °C ; respiration 7..15 mL at 15 °C ; respiration 7..13 mL at 20 °C
@ ucd-squash-soft
§ Optimum Temperature
1|squash-summer|storage 5..10 °C = 41..50 °F ; humidity 95 % ; life ..10 days
2|squash-summer|chilling 5 °C (for more than 3-4 days)
@ ucd-squash-winter
§ Optimum Temperature
1|squash-winter pumpkins|storage 12.5..15 °C = 55..59 °F
2|squash-winter pumpkins|chilling 10 °C = 50 °F
3|squash-winter pumpkins|life 2..6 months (depending on the cultivar)
§ Optimum Relative Humidity
4|squash-winter pumpkins|humidity 50..70 %
@ ucd-eggplant
§ Optimum Temperature
1|eggplant|storage 10..12 °C = 50..54 °F ; life ..14 days
§ Optimum Relative Humidity
2|eggplant|humidity 90..95 %
§ Responses to Ethylene
3|eggplant|ethylene-sensitivity "moderate to high"
@ ucd-pepper-bell
§ Optimum Temperature
1|peppers-bell|storage 7.5 °C = 45 °F (best for maximum shelf-life) ; life 3..5 weeks
2|peppers-bell|chilling 5 °C = 41 °F (after 2 weeks)
§ Optimum Relative Humidity
3|peppers-bell|humidity 95.. %
§ Rates of Respiration
4|peppers-bell|respiration 3..4 mL at 5 °C ; respiration 5..8 mL at 10 °C ; respiration 18..20 mL at 20 °C
§ Responses to Ethylene
5|peppers-bell|ethylene-sensitivity "respond very little"
`;
