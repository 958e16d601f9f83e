/** Published values of fact sheets and answers of UC Davis on fruit; see ../../published-values.ts for the form of a line. */
export const ucDavisFruit = `
@ ucd-plum
§ Optimum Temperatures
1|plums|storage -1.0..0 °C = 30.5..32 °F
§ Optimum Relative Humidity
2|plums|humidity 90..95 %
§ Rates of Respiration
3|plums|respiration 1..1.5 mL at 0 °C ; respiration 4.2 mL at 10 °C ; respiration 8.2 mL at 20 °C
@ ucd-watermelon
§ Optimum Temperature
1|watermelon|storage 10..15 °C = 50..59 °F
2|watermelon|life 14 days [at 15 °C]
3|watermelon|life ..21 days [at 7-10 °C]
4|watermelon|transport 7.2 °C = 45 °F (transit of more than 7 days)
5|watermelon|humidity 85..90 % (transit)
@ ucd-answer-mixed-loads
§ answer
1|watermelon|transport 45..50 °F ; ethylene-sensitivity "ethylene sensitive"
2|grapefruit|transport 55..60 °F ; ethylene-production "little or no ethylene"
@ ucd-papaya
§ Optimum Temperature
1|papaya|storage 13 °C = 55 °F (mature-green to 1/4 yellow)
2|papaya|storage 10 °C = 50 °F (partially ripe)
3|papaya|storage 7 °C = 45 °F (ripe)
§ Optimum Relative Humidity
4|papaya|humidity 90..95 %
§ Rates of Respiration
5|papaya|respiration 3..5 mL at 7 °C ; respiration 4..6 mL at 10 °C ; respiration 10..12 mL at 13 °C ; respiration 15..35 mL at 15 °C
§ Rates of Ethylene Production
6|papaya|ethylene-production "0.1-2 µL/kg·h" [at 7 °C] ; ethylene-production "0.2-4 µL/kg·h" [at 10 °C] ; ethylene-production "0.5-8 µL/kg·h" [at 13 °C] ; ethylene-production "1-15 µL/kg·h" [at 15 °C]
§ Responses to Controlled Atmospheres
7|papaya|life 2..4 weeks (at 13 °C, in air)
@ ucd-strawberry
§ Optimum Temperature
1|strawberries|storage -0.5..0.5 °C = 31..33 °F
§ Optimum Relative Humidity
2|strawberries|humidity 90..95 %
§ Rates of Respiration
3|strawberries|respiration 6..10 mL at 0 °C ; respiration 25..50 mL at 10 °C ; respiration 50..100 mL at 20 °C
@ ucd-bushberries
§ Optimum Temperature
1|blackberries raspberries|storage -0.5..0.5 °C = 31..33 °F ; life 2..5 days
2|blueberries|storage -0.5..0.5 °C = 31..33 °F ; life 1..2 weeks
3|cranberries|storage 2..4 °C = 35..39 °F ; life 2..4 months
§ Optimum Relative Humidity
4|blackberries blueberries cranberries raspberries|humidity 90..95 %
§ Rates of Respiration
5|blackberries|respiration 11 mL at 0 °C ; respiration 31 mL at 10 °C ; respiration 78 mL at 20 °C
6|blueberries|respiration 3 mL at 0 °C ; respiration 9 mL at 10 °C ; respiration 34 mL at 20 °C
7|cranberries|respiration 2 mL at 0 °C ; respiration 4 mL at 10 °C ; respiration 9 mL at 20 °C
8|raspberries|respiration 12 mL at 0 °C ; respiration 49 mL at 10 °C ; respiration 100 mL at 20 °C
@ ucd-grape
§ Optimum Temperature
1|grapes-table|storage -1.0..0 °C = 30..32 °F
2|grapes-table|freezing -2.7 °C = 27.1 °F
3|grapes-table|freezing -2.0 °C = 28 °F [stem]
§ Optimum Relative Humidity
4|grapes-table|humidity 90..95 %
§ Responses to Ethylene
5|grapes-table|ethylene-sensitivity "not very sensitive"
§ Rates of Respiration
6|grapes-table|respiration 1..2 mL at 0 °C ; respiration 3..4 mL at 5 °C ; respiration 5..8 mL at 10 °C ; respiration 12..15 mL at 20 °C
@ ucd-grape-older
§ Optimum Temperature
1|grapes-table|freezing -2.1 °C = 28.1 °F
@ ucd-banana
§ Optimum Temperature
1|bananas-green|storage-or-transport 13..14 °C = 56..58 °F
§ Optimum Relative Humidity
2|bananas-green|humidity 90..95 %
§ Rates of Respiration
3|bananas-green|respiration 10..30 mL at 13 °C ; respiration 12..40 mL at 15 °C ; respiration 15..60 mL at 18 °C ; respiration 20..70 mL at 20 °C
@ ucd-avocado
§ Optimum Temperature
1|avocados-hass|storage 5..13 °C = 41..55 °F (mature-green, depending on cultivar and duration)
2|avocados-hass|storage 2..4 °C = 36..40 °F [ripe]
§ Optimum Relative Humidity
3|avocados-hass|humidity 90..95 %
§ Rates of Respiration
4|avocados-hass|respiration 10..25 mL at 5 °C ; respiration 25..80 mL at 10 °C ; respiration 40..150 mL at 20 °C
@ ucd-cantaloupe
§ Optimum Temperature
1|cantaloupe|storage 2.2..5 °C = 36..41 °F
2|cantaloupe|life ..21 days (at 2.2 °C)
3|cantaloupe|life 12..15 days (typically)
@ ucd-orange
§ Optimum Temperature
1|oranges-california-arizona|storage 3..8 °C = 38..46 °F (depending on cultivar, maturity and production area) ; life ..3 months
2|oranges-florida-texas|storage 0..1 °C = 32..34 °F (some Florida-grown cultivars)
3|oranges-california-arizona|storage 9 °C = 48 °F [Arizona-grown Valencia]
§ Optimum Relative Humidity
4|oranges-california-arizona oranges-florida-texas|humidity 90..95 %
§ Rates of Respiration
5|oranges-california-arizona oranges-florida-texas|respiration 2..4 mL at 5 °C ; respiration 3..5 mL at 10 °C ; respiration 6..12 mL at 15 °C ; respiration 11..17 mL at 20 °C
@ ucd-mango
§ Optimum Temperature
1|mangoes|storage 13 °C = 55 °F (mature-green)
2|mangoes|storage 10 °C = 50 °F [partially ripe and ripe]
§ Optimum Relative Humidity
3|mangoes|humidity 90..95 %
§ Rates of Respiration
4|mangoes|respiration 12..16 mL at 10 °C ; respiration 15..22 mL at 13 °C ; respiration 19..28 mL at 15 °C ; respiration 35..80 mL at 20 °C
§ Postharvest life potential
5|mangoes|life 2..4 weeks (at 13 °C)
@ ucd-kiwifruit
§ Optimum Temperature
1|kiwifruit|storage 0 °C = 32 °F ; freezing -1.5 °C = 29.3 °F
§ Optimum Relative Humidity
2|kiwifruit|humidity 90..95 %
§ Responses to Ethylene
3|kiwifruit|ethylene-sensitivity "extremely sensitive"
§ Rates of Respiration
4|kiwifruit|respiration 1.5..2.0 mL at 0 °C ; respiration 3..4 mL at 5 °C ; respiration 5..7 mL at 10 °C ; respiration 9..12 mL at 15 °C ; respiration 15..20 mL at 20 °C
@ ucd-pear-bartlett
§ Optimum Temperature
1|pears-bartlett|storage -1..0 °C = 30..32 °F
§ Optimum Relative Humidity
2|pears-bartlett|humidity 90..95 %
§ Rates of Respiration
3|pears-bartlett|respiration 2..3 mL at 0 °C ; respiration 4..5 mL at 2 °C ; respiration 6..8 mL at 5 °C ; respiration 15..35 mL at 20 °C
@ ucd-pear-winter
§ Optimum Temperature
1|pears-winter|storage -1..0 °C = 30..32 °F ; freezing -2..-1.5 °C = 28..29 °F ; humidity 90..95 %
@ ucd-nectarine-peach
§ Optimum Temperature
1|peaches-nectarines|storage -1..0 °C = 30.5..32 °F
2|peaches-nectarines|freezing -3..-2.5 °C = 26.5..29.5 °F (depending on soluble solids)
§ Optimum Relative Humidity
3|peaches-nectarines|humidity 90..95 %
§ Rates of Respiration
4|peaches-nectarines|respiration 2..3 mL at 0 °C ; respiration 8..12 mL at 10 °C ; respiration 32..55 mL at 20 °C
@ ucd-cherry
§ Optimum Temperature
1|cherries-sweet|storage -1.0..0 °C = 30..32 °F
§ Optimum Relative Humidity
2|cherries-sweet|humidity 90..95 %
§ Responses to Ethylene
3|cherries-sweet|ethylene-sensitivity "minimal"
@ ucd-lemon
§ Optimum Temperature
1|lemons|storage-or-transport 12..14 °C = 54..57 °F (depending on cultivar, maturity and duration) ; life ..6 months
§ Optimum Relative Humidity
2|lemons|humidity 90..95 %
§ Rates of Respiration
3|lemons|respiration 5..6 mL at 10 °C ; respiration 7..12 mL at 15 °C ; respiration 10..14 mL at 20 °C
@ ucd-lime
§ Optimum Temperature
1|limes|storage-or-transport 10..13 °C = 50..55 °F (depending on cultivar, maturity and duration) ; life 6..8 weeks (up to)
§ Optimum Relative Humidity
2|limes|humidity 90..95 %
§ Rates of Respiration
3|limes|respiration 3..5 mL at 10 °C ; respiration 5..8 mL at 15 °C ; respiration 6..10 mL at 20 °C
@ ucd-grapefruit
§ Optimum Temperature
1|grapefruit|storage-or-transport 12..14 °C = 54..57 °F (depending on cultivar, production area and maturity) ; life 6..8 weeks (up to)
§ Optimum Relative Humidity
2|grapefruit|humidity 90..95 %
§ Rates of Respiration
3|grapefruit|respiration 3..5 mL at 10 °C ; respiration 4..7 mL at 13 °C ; respiration 5..9 mL at 15 °C
@ ucd-apple-fuji
§ Postharvest Handling and Storage
1|apples|storage -1..1 °C = 30..34 °F [Fuji] ; humidity 90..95 % [Fuji]
@ ucd-apple-gala
§ Optimum Temperature
1|apples|storage -1..1 °C = 30..34 °F [Gala]
@ ucd-apple-granny-smith
§ Optimum Temperature
1|apples|storage 0..1 °C = 32..34 °F [Granny Smith] ; freezing -1.5 °C = 29.3 °F (Granny Smith)
@ ucd-pineapple
§ Optimum Temperature
1|pineapple|storage 10..13 °C = 50..55 °F (partially ripe) ; humidity 85..90 %
@ ucd-pomegranate
§ Optimum Temperature
1|pomegranates|storage 5 °C = 41 °F (up to 2 months) ; life ..2 months
2|pomegranates|storage 7.2 °C = 45 °F [longer storage]
§ Optimum Relative Humidity
3|pomegranates|humidity 90..95 %
§ Rates of Respiration
4|pomegranates|respiration 2..4 mL at 5 °C ; respiration 4..8 mL at 10 °C ; respiration 8..18 mL at 20 °C
@ ucd-pomegranate-chilling
§ Physiology
1|pomegranates|freezing -3 °C = 26.6 °F ; chilling 5 °C = 41 °F (longer than one month)
`;
