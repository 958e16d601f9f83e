/** Sentences and table cells that values stand in, of fact sheets and answers of UC Davis on fruit; numbered as in ../values/uc-davis-fruit.ts. */
export const ucDavisFruit = `
@ ucd-plum
1|-1.0 to 0°C (30.5-32°F) Freezing point varies depending on SSC.
2|90-95% R.H; an air velocity of approximately 50 CFM is suggested.
3|ml CO2/kg·hr 1-1.5 4.2 8.2
@ ucd-watermelon
1|10-15°C (50-59°F) Storage life is typically 14 days at 15°C (59°F)
2|Storage life is typically 14 days at 15°C (59°F) with up to 21 days attainable at 7-10°C
3|up to 21 days attainable at 7-10°C (45-50°F)
4|transit to distant markets (>7 days), most recommendations use 7.2°C (45°F) and 85-90% R.H.
5|most recommendations use 7.2°C (45°F) and 85-90% R.H.
@ ucd-answer-mixed-loads
1|watermelon is ethylene sensitive and should be shipped at 45 - 50°F
2|grapefruit produces little or no ethylene and should be shipped at 55 - 60°F
@ ucd-papaya
1|13°C (55°F) for mature-green to ¼ yellow papayas
2|10°C (50°F) for partially-ripe (¼ to ½ yellow) papayas
3|7°C (45°F) for ripe (>½ yellow) papayas
4|90-95%
5|ml CO2/kg·hr | 3-5 | 4-6 | 10-12 | 15-35
6|µl C2H4/kg·hr | 0.1-2 | 0.2-4 | 0.5-8 | 1-15
7|Postharvest life potential at 13°C (55°F): 2-4 weeks in air and 3-5 weeks in CA
@ ucd-strawberry
1|0 ± 0.5°C (32 ± 1°F)
2|90 to 95%
3|ml CO2/kg·hr 6-10 25-50 50-100
@ ucd-bushberries
1|0±0.5°C (32±1°F) for blackberry and raspberry (2-5 days); and blueberry (1-2 weeks)
2|0±0.5°C (32±1°F) for blackberry and raspberry (2-5 days); and blueberry (1-2 weeks)
3|3±1°C (37±2°F) for cranberry (2-4 months).
4|Optimum Relative Humidity 90-95%
5|Blackberry Blueberry Cranberry Raspberry 0 32 11 3 2 12 10 50 31 9 4 49 20 68 78 34 9 100
6|Blackberry Blueberry Cranberry Raspberry 0 32 11 3 2 12 10 50 31 9 4 49 20 68 78 34 9 100
7|Blackberry Blueberry Cranberry Raspberry 0 32 11 3 2 12 10 50 31 9 4 49 20 68 78 34 9 100
8|Blackberry Blueberry Cranberry Raspberry 0 32 11 3 2 12 10 50 31 9 4 49 20 68 78 34 9 100
@ ucd-grape
1|Berry storage at -1.0 to 0°C (30-32°F) is recommended.
2|The highest freezing point for berries is -2.7°C (27.1°F), but freezing point varies (down to -3.0°C (26.6°F) depending on SSC.
3|A -2.0°C (28°F) stem freezing point has been reported.
4|90-95% RH and an air velocity of approximately 20-40 feet per minute (FPM) is suggested during storage.
5|Table grapes are not very sensitive to ethylene.
6|ml CO2/kg·hr 1-2 3-4 5-8 12-15
@ ucd-grape-older
1|The highest freezing point for berries is -2.1°C (28.1°F), but freezing point varies depending on SSC.
@ ucd-banana
1|13-14C (56-58F) for storage and transport
2|Optimum Relative Humidity 90-95%
3|10-30 12-40 15-60 20-70
@ ucd-avocado
1|5-13°C (41-55°F) for mature-green avocados, depending on cultivar and duration.
2|2-4°C (36-40°F) for ripe avocados.
3|Optimum Relative Humidity 90-95%
4|ml CO2/kg·hr 10-25 25-80 40-150
@ ucd-cantaloupe
1|2.2°C-5°C (36°F-41°F)
2|Storage life is up to 21 days at 2.2°C (36°F) but sensory quality may be reduced.
3|Typically 12-15 days of shelf life are attainable within the
@ ucd-orange
1|3-8°C (38-46°F) for up to 3 months, depending on cultivar, maturity-ripeness stage at harvest and production area.
2|Some Florida-grown cultivars can be kept at 0-1°C (32-34°F).
3|Arizona-grown Valencia oranges should be kept at 9°C (48°F).
4|Optimum Relative Humidity 90-95%
5|ml CO2/kg·hr 2-4 3-5 6-12 11-17
@ ucd-mango
1|13°C (55°F) for mature-green mangoes
2|10°C (50°F) for partially-ripe and ripe mangoes
3|Optimum Relative Humidity 90-95%
4|ml CO2/kg·hr 12-16 15-22 19-28 35-80
5|Postharvest life potential at 13°C (55°F): 2-4 week
@ ucd-kiwifruit
1|0°C (32°F); highest freezing point is -1.5°C (29.3°F)
2|Optimum Relative Humidity 90-95%
3|Kiwifruits are extremely sensitive to ethylene.
4|1.5-2.0 3-4 5-7 9-12 15-20
@ ucd-pear-bartlett
1|-1 to 0°C (30 to 32°F)
2|90 to 95% Relative Humidity
3|ml CO2/kg·hr 2-3 4-5 6-8 15-35
@ ucd-pear-winter
1|-1 to 0°C (30 to 32°F); freezing temperatures are -1.5 to -2°C (29 to 28°F) 90-95%
@ ucd-nectarine-peach
1|-1 to 0°C (30.5-32°F)
2|Freezing point varies depending on SSC from -3 to -2.5°C (26.5 to 29.5°F)
3|90-95% R.H.; an air velocity of approximately 50 CFM is suggested during storage.
4|ml CO2/kg·hr 2-3 8-12 32-55
@ ucd-cherry
1|-0.5 ± 0.5°C (31 ± 1°F)
2|90-95%; high humidity is particularly important to maintain green stem color.
3|Cherry response to ethylene is minimal.
@ ucd-lemon
1|12-14°C (54-57°F) depending on cultivar, maturity-ripeness stage at harvest, production area, and duration of storage and transport (can be up to 6 months).
2|Optimum Relative Humidity 90-95%
3|ml CO2/ kg·hr | 5-6 | 7-12 | 10-14 |
@ ucd-lime
1|10-13°C (50-55°F) depending on cultivar, maturity-ripeness stage at harvest, and duration of storage + transport (up to 6-8 weeks).
2|Optimum Relative Humidity 90-95%
3|ml CO2/kg·hr 3-5 5-8 6-10
@ ucd-grapefruit
1|12-14°C (54-57°F) depending on cultivar, production area, maturity-ripeness stage at harvest, and storage & transport duration (up to 6-8 weeks).
2|Optimum Relative Humidity 90-95%
3|ml CO2/ kg·hr | 3-5 | 4-7 | 5-9 | 7-1 |
@ ucd-apple-fuji
1|0 ± 1°C (32 ± 2°F) 90 to 95%
@ ucd-apple-gala
1|0° ± 1°C (32 ± 2°F)
@ ucd-apple-granny-smith
1|0.5 ± 0.5°C (33 ± 1°F); highest freezing point is -1.5 °C (29.3°F)
@ ucd-pineapple
1|10-13°C (50-55°F) for partially-ripe pineapples. 85-90%
@ ucd-pomegranate
1|5°C (41°F) for up to 2 months; longer storage should be at 7.2°C (45°F) to avoid chilling injury.
2|5°C (41°F) for up to 2 months; longer storage should be at 7.2°C (45°F) to avoid chilling injury.
3|90-95%; pomegranates are very susceptible to water loss resulting in shriveling of the skins.
4|ml CO2/kg·hr 2-4 4-8 8-18
@ ucd-pomegranate-chilling
1|Pomegranate are susceptible to chilling injury if stored longer than one month at temperatures between their freezing point (-3°C or 26.6°F) and 5°C (41°F).
`;
