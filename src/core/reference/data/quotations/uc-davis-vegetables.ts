/** Sentences and table cells that values stand in, of fact sheets of UC Davis on vegetables and herbs; numbered as in ../values/uc-davis-vegetables.ts. */
export const ucDavisVegetables = `
@ ucd-pea
1|0°C (32°F); 95-98% R.H.
2|highly perishable and will not maintain good quality for more than 2 weeks
3|0 | ... | 15-24 |
4|5 | ... | 27-38 |
5|10 | ... | 34-59 |
6|15 | ... | 89-101 |
7|20 | ... | 123-180 |
8|< 0.1µl / kg·hr at 20°C (68°F)
9|Peas are moderately sensitive to exogenous ethylene.
@ ucd-potato-early
1|:Freezing Injury 0.8 -
2|86 5
3|11 7 10
4|16 7 15
5|23 - 9 20
6|extended storage of up to 5 months at 4°C (39°F) and 95 to 98% RH
7|At optimum conditions, potatoes should have good quality after storage of 3 to 5 weeks.
@ ucd-sweetpotato
1|should be stored between 12.5°C and 15°C (55°F to 59°F) with high relative humidity (>90%)
2|A storage life of 6-10 months can be expected under these conditions
3|Sweetpotato roots are chilling sensitive and should be stored between 12.5°C and 15°C
@ ucd-radish
1|Optimum Temperature 32°F (0°C) Rapid cooling is essential
2|acceptable quality for 7 to 14 days with tops and 21 to 28 days if topped
3|Daikon-type radish may last from 3 to 4 months at these same conditions. 95-100%
4|may last from 3 to 4 months at these same conditions. 95-100%
@ ucd-tomato
1|Mature Green 12.5 – 15°C (55 – 60°F)
2|Light Red (USDA Color Stage 5) 10 – 12.5°C (50 – 55°F)
3|Firm-ripe (USDA Color Stage 6) 7 – 10°C (44 – 50°F) for 3-5 days
4|Mature-green tomatoes can be stored up to 14 days prior to ripening at 12.5°C (55°F)
@ ucd-herbs
1|Freeze damage can occur on dill stored at -0.7°C (30.7°F), on chives at -0.9°C (30.4°F), and on parsley at -1.1°C (30.0°F).
2|Freeze damage can occur on dill stored at -0.7°C (30.7°F), on chives at -0.9°C (30.4°F), and on parsley at -1.1°C (30.0°F).
3|Freeze damage can occur on dill stored at -0.7°C (30.7°F), on chives at -0.9°C (30.4°F), and on parsley at -1.1°C (30.0°F).
4|For most herbs, storage at 0°C (32°F) is required to optimize quality and storage life.
5|Expected shelf-life is 3 weeks at 0°C (32°F) and 2 weeks at 5°C (41°F).
6|Basil and shiso are chilling sensitive and should be stored above 10°C (50°F).
7|a shelf-life of 1 to 2 weeks can be expected for basil and shiso
@ ucd-herbs-copy
1|storage at 0°C (32°F) with >95% RH is required to optimize quality and storage life
@ uc-small-farm-news
1|Optimum postharvest temperature for fresh thyme, oregano, rosemary, mints, sage, parsley, cilantro, savory, marjoram, dill, and tarragon is 32°F.
2|A shelf life of 3 to 4 weeks can be achieved at this temperature.
@ ucd-mushroom
1|0°C-1.5°C (32°F-35°F) Storage life is typically 5-7 days at 1.5°C (35°F) and 2 days at 4.5°C (40°F).
2|95-98% High relative humidity is essential to prevent desiccation and loss of glossiness.
3|0 (32) 14-22
4|5 (41) 35
5|10 (50) 50
6|20 (68) 132-158
7|Agaricus mushrooms are not significantly impacted by exogenous ethylene.
8|>0.1 µl/kg·hr at 20°C (68°F)
@ ucd-mushroom-old
1|0 32 28-44
2|5 41 71
3|10 50 100
4|20 68 264-316
@ ucd-onion-dry
1|Pungent Onions: Typically up to 6 to 9 months at 0°C (32°F) depending on the cultivar
2|Mild onions: Typically 0.5 to 1 month at 0°C (32°F)
3|65 to 70% with adequate air circulation (1m3/min/m3 of onion)
4|75 to 80% for best scale color development
@ ucd-answer-onions
1|the recommended long term storage conditions for onions are 0°C and 65 to 70% relative humidity
2|Dry onions are placed in group 3, 55 – 65 °F, even though the optimal temperature is set to be 32 °F.
@ ucd-sweetcorn
1|0° – 1.5°C (32°- 34°F); 95-98% R.H.
2|the maximum duration including transit times should not exceed 7 days
3|Super sweet corn has been stored at 0°C for up to 21 days
@ ucd-lettuce-romaine
1|0°C (32°F) is required to optimize the postharvest life of romaine lettuce.
2|A shelf-life of around 21 days is expected at this temperature.
3|At 5°C (41°F) a shelf-life of about 14 days can be expected as long as no ethylene is in the environment.
4|Freeze damage can occur during storage if the lettuce is held at <-0.2°C (31.7°F).
5|Relative Humidity >95%
6|Romaine lettuce is sensitive to ethylene.
7|Ethylene production rates are very low:
8|5 °C 9-12 | 10 °C 15-20 | 15 °C 19-25 | 20 °C 30-38
@ ucd-lettuce-crisphead
1|0°C (32°F) is required to optimize lettuce storage life. A shelf-life of 21-28 days can be expected at this temperature and RH.
2|At 5°C (41°F) a shelf-life of 14 days can be expected as long as no ethylene is in the environment.
3|During storage, freeze damage can occur if the lettuce is stored at at <-0.2°C (31.7°F).
4|Optimum Relative Humidity >95%
5|Iceberg lettuce is extremely sensitive to ethylene.
6|ml CO2/kg·hr 3-8 6-10 11-20 16-23 25-30
@ ucd-broccoli
1|A temperature of 0°C (32°F) is required to optimize broccoli storage life (21-28 days).
2|Heads stored at 5°C (41°F) can have a storage life of 14 days; storage life at 10°C (50°F) is about 5 days.
3|Broccoli will freeze if stored at -0.6°C (30.6°F) to -1.0°C (30°F).
4|Optimum Relative Humidity >95%
5|Broccoli is extremely sensitive to exposure to ethylene.
6|ml CO2/kg·hr | 10-11 | 16-18 | 38-43 | 80-90 | 140-160
@ ucd-celery
1|0°C (32°F) At optimum conditions, celery should have good quality after storage up to 5 to 7 weeks.
2|Commonly, celery is rapidly pre-cooled and then stored at 0 to 2°C (32 to 36°F).
3|98-100% R.H.
4|Celery is not very sensitive to exogenous ethylene at low levels and low temperatures.
5|0°C (32°F) 3 5°C (41°F) 5 10°C (50°F) 12 15°C (59°F) 17 20°C (68°F) 32
@ ucd-cauliflower
1|Optimum Temperature 0°C (32°F)
2|Storage of cauliflower is generally not recommended for more than 3 weeks for good visual and sensory quality.
3|Optimum Relative Humidity 95-98%
4|Cauliflower is highly sensitive to exogenous ethylene.
5|0 32 8-9 5 41 10-11 10 50 16-18 15 59 21-25 20 68 37-42 25 77 43-48
@ ucd-spinach
1|0°C (32°F) Spinach is highly perishable and will not maintain good quality for more than 2 weeks.
2|0°C (32°F); 95-98% R.H.
3|Spinach is highly sensitive to exogenous ethylene.
4|0 32 9-11 5 41 17-29 10 50 41-69 15 59 67-111 20 68 86-143
@ ucd-asparagus
1|0°C-2°C (32°F-35.6°F)
2|Storage life is typically 14-21 days at 2°C
3|Extended storage (~10-12 days) in air at 0°C may cause chilling injury.
4|will likely result at temperatures of -0.6?C (30.9?F) or lower
5|95-100% High relative humidity is essential to prevent dessication and loss of glossiness.
6|0 (32) 14-40 5 (41) 28-68 10 (50) 45-152 15 (59) 80-168 20 (68 138-250
@ ucd-cucumber
1|10-12.5°C (50-55°F)
2|Storage of cucumber is generally less than 14 days as visual and sensory quality deteriorate rapidly.
3|Short term storage or transit temperatures below this range (such as 7.2°C (45°F)) are commonly used but will result in chilling injury after 2-3 days.
4|Cucumbers are chilling sensitive at temperatures below 10°C (50°F) if held for more than a day to 3 days depending on temperature and cultivar.
5|Freezing injury will be initiated at -0.5°C (31°F).
6|Optimum Relative Humidity 95%
7|Cucumbers are highly sensitive to exogenous ethylene.
8|ml CO2/kg·hr 12-15 12-17 7-24 10-26
@ ucd-cabbage
1|Storage at 0°C (32°F) is required to optimize cabbage storage life.
2|Early crop round cabbage can be stored 3-6 weeks, while late crop cultivars can be stored for up to 6 months.
3|For the latter, storage at -0.5°C (31°F) is sometimes recommended.
4|Chinese cabbage can be stored from 2 to 6 months, depending on cultivar, at 0°C to 2.5°C (32°F to 36°F).
5|Storage at 0°C (32°F) with >95% RH is required to optimize cabbage storage life.
6|Freeze damage can occur if round cabbages are stored below -0.9°C (30.4°F) and if Chinese cabbage is stored below -0.6°C (31°F).
7|Freeze damage can occur if round cabbages are stored below -0.9°C (30.4°F) and if Chinese cabbage is stored below -0.6°C (31°F).
@ ucd-garlic
1|For long-term storage, garlic is best maintained at temperatures of -1°C to 0°C (30°F-32°F) with low relative humidity (60-70%). Good airflow is also necessary to prevent any moisture accumilation. Under these conditions garlic can be stored for more than 9 months.
2|Intact bulbs 2 – 6 4 – 12 6 – 18 7 – 15 7 – 13
@ ucd-squash-soft
1|5° – 10°C (41°- 50°F); 95% R.H.e Summer squashes are not stored, ideally, for longer than 10 days.
2|Storage at below 5°C for more than 3-4 days will generally result in chilling injury.
@ ucd-squash-winter
1|12.5-15°C (55-59°F)
2|Pumpkins and winter squash are very chilling sensitive when stored below 10°C (50°F).
3|Depending on the cultivar a storage life of 2 to 6 months can be expected at 12.5-15°C (55-59°F).
4|50-70% with 60% usually considered optimum moderate relative humidity with good ventilation is essential for optimum storage.
@ ucd-eggplant
1|10-12°C (50-54°F) Storage of eggplant is generally less than 14 days as visual and sensory qualities deteriorate rapidly.
2|Optimum Relative Humidity 90-95% R.H.
3|Eggplant fruit have a moderate to high sensitivity to exogenous ethylene.
@ ucd-pepper-bell
1|Storage at 7.5°C (45°F) is best for maximum shelf-life (3-5 weeks);
2|peppers can be stored at 5°C (41°F) for 2 weeks, and although this reduces water loss, chilling injury will begin to appear after that period.
3|> 95%; firmness of peppers is directly related to water loss
4|ml CO2/kg·hr | 3-4 | 5-8 | 18-20 |
5|Bell Peppers respond very little to ethylene;
`;
