/** Sentences and table cells that values stand in, of extension services, storage manuals and reports; numbered as in ../values/extension.ts. */
export const extension = `
@ usda-report-423
1|Tomatoes freeze at about 30.5° F.
@ nc-sweetpotato
1|Long-term storage areas should be maintained at 55 to 60 degrees with 85 % relative humidity
2|Properly cured and stored sweet potatoes can be held up to 12 months
3|Temperatures below 55 degrees may cause hardcore
@ mississippi-sweetpotato
1|The ideal storage temperature for sweetpotatoes is 55 to 60°F.
2|Chilling injury occurs when roots are exposed to temperatures between 32 and 55°F.
3|Freezing injury occurs when temperatures are below 32°F
@ utah-potato
1|gradually lowered to 40°F (table stock or seed potatoes) or maintained at 50°F (chipping potatoes)
@ nc-state-sweet-corn
1|Optimum temperature: 32°F
2|Freezing temperature: 31°F
3|Optimum humidity: 90 to 98%
4|5 to 7 days for standard varieties; 8 to 12 days for supersweet varieties
@ wflo-garlic
1|32°F Temperature (0°C) Relative Humidity 60-70% with ventilation Storage Period 6-7 months, if properly cured 30.5°F Highest Freezing Point (-0.8°C)
@ nc-state-beans
1|Optimum temperature: 37 to 45°F Freezing temperature: 31°F Optimum humidity: 95% Storage life: 5 to 10 days
@ utah-cucurbits
1|The optimal storage conditions for cucumbers is 50-55°F and summer squash is 45-50 °F at 80-90% relative humidity . Cucumbers and summer squash stored at these conditions generally keep for 7-10 days
2|The optimal storage conditions for cucumbers is 50-55°F and summer squash is 45-50 °F at 80-90% relative humidity . Cucumbers and summer squash stored at these conditions generally keep for 7-10 days
3|Storage or transit temperatures should be kept above 45° F to minimize chilling injury which takes as little as 2-3 days to occur.
4|The optimal storage conditions for winter squash and pumpkins are 50-60 °F at 50-70% relative humidity.
@ utah-melons
1|Watermelons stored at 55-60°F and 90% humidity will keep for 10-15 days.
2|Do not store below 50°F, as fruits are sensitive to chilling injury and disease development.
@ california-agriculture-1974
1|Generaly, breakdown is most severe under storage betwen 2.2 to 5° C (36 to 41° F), and least severe at or near 0° C (32° F).
@ western-farm-press
1|As a result, fruit would be exposed to a temperature range of 36 to 50 degrees, the range he calls the “killing zone” because it halts ripening and damages the fruit.
@ wflo-peaches
1|Fresh Air Storage 32 0 2-6 weeks* 90-95% Freezing Point 30 -1
@ wflo-melons
1|Cantaloupes 35-40 2-4 90-95 2-3 30 -1
2|Casaba Melons 45-50 7-10 90-95 4-6 30 -1
3|Crenshaw Melons 45-50 7-10 90-95 2 30 -1
4|Honeydew Melons 45-50 7-10 90-95 2-3 30 -1
5|Persian Melons 45-50 7-10 90-95 2 31 -0.5
6|Watermelons 50-60 10-26 90-95 2-3 30 -0.5
7|Melons with suggested storage temperatures of 45-50°F (7-10°C) should never be allowed to cool below 40°F (4.4°C), because exposures of a few days can result in chilling injury.
@ nc-state-peppers
1|Optimum temperature: 45 to 50°F Freezing temperature: 31°F (significant chill injury occurs below 40°F) Optimum humidity: 90 to 95% Storage life: 2 to 3 weeks
@ purdue-poinsettias
1|Do not expose plants to temperature below 50 ºF
@ nc-state-poinsettias
1|Sales and delivery of plants during periods of extremely cold temperatures can be difficult because poinsettia bracts can be severely damaged by temperatures below 50°F.
`;
