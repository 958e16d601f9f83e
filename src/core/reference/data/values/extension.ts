/** Published values of extension services, storage manuals and reports; see ../../published-values.ts for the form of a line. */
export const extension = `
@ usda-report-423
§ abstract
1|tomatoes-mature-green tomatoes-ripe|freezing 30.5 °F (about; fruit on the vine)
@ nc-sweetpotato
§ Storage
1|sweet-potatoes|storage 55..60 °F ; humidity 85 %
2|sweet-potatoes|life ..12 months (cured)
3|sweet-potatoes|chilling 55 °F (hardcore)
@ mississippi-sweetpotato
§ text
1|sweet-potatoes|storage 55..60 °F
2|sweet-potatoes|chilling 55 °F
3|sweet-potatoes|freezing 32 °F [as printed: occurs when temperatures are below]
@ utah-potato
§ text
1|potatoes-table|storage 40 °F (table stock or seed) ; storage 50 °F [chipping]
@ nc-state-sweet-corn
§ Freshness Facts
1|sweet-corn|storage 32 °F
2|sweet-corn|freezing 31 °F
3|sweet-corn|humidity 90..98 %
4|sweet-corn|life 5..7 days (standard) ; life 8..12 days [supersweet]
@ wflo-garlic
§ Storage Conditions
1|garlic|storage 32 °F = 0 °C ; humidity 60..70 % ; life 6..7 months ; freezing 30.5 °F = -0.8 °C
@ nc-state-beans
§ Freshness Facts
1|beans-snap peas-southern|storage 37..45 °F (green beans and field peas) ; freezing 31 °F (green beans and field peas) ; humidity 95 % (green beans and field peas) ; life 5..10 days (green beans and field peas)
@ utah-cucurbits
§ Postharvest Handling and Storage
1|cucumbers|storage 50..55 °F ; humidity 80..90 % ; life 7..10 days
2|squash-summer|storage 45..50 °F ; humidity 80..90 % ; life 7..10 days
3|cucumbers squash-summer|chilling 45 °F
4|squash-winter pumpkins|storage 50..60 °F ; humidity 50..70 %
@ utah-melons
§ Melon - Postharvest Care
1|watermelon|storage 55..60 °F ; humidity 90 % ; life 10..15 days
2|watermelon|chilling 50 °F
@ california-agriculture-1974
§ summary
1|peaches-nectarines plums|chilling-band 2.2..5 °C = 36..41 °F (internal breakdown, most severe)
@ western-farm-press
§ article
1|peaches-nectarines|chilling-band 36..50 °F (the killing zone)
@ wflo-peaches
§ Storage Conditions
1|peaches-nectarines|storage 32 °F = 0 °C (peaches) ; life 2..6 weeks (peaches, depending on variety and maturity) ; humidity 90..95 % (peaches) ; freezing 30 °F = -1 °C [peaches, rounded to 1 °F]
@ wflo-melons
§ Storage Conditions
1|cantaloupe|storage 35..40 °F = 2..4 °C ; humidity 90..95 % ; life 2..3 weeks ; freezing 30 °F = -1 °C [rounded to 1 °F]
2|casaba|storage 45..50 °F = 7..10 °C ; humidity 90..95 % ; life 4..6 weeks ; freezing 30 °F = -1 °C [rounded to 1 °F]
3|crenshaw|storage 45..50 °F = 7..10 °C ; humidity 90..95 % ; life 2 weeks ; freezing 30 °F = -1 °C [rounded to 1 °F]
4|honeydew|storage 45..50 °F = 7..10 °C ; humidity 90..95 % ; life 2..3 weeks ; freezing 30 °F = -1 °C [rounded to 1 °F]
5|persian-melon|storage 45..50 °F = 7..10 °C ; humidity 90..95 % ; life 2 weeks ; freezing 31 °F = -0.5 °C [rounded to 1 °F]
6|watermelon|storage 50..60 °F ; humidity 90..95 % ; life 2..3 weeks ; freezing 30 °F = -0.5 °C [rounded to 1 °F]
§ text
7|casaba crenshaw honeydew persian-melon|chilling 40 °F = 4.4 °C (a few days)
@ nc-state-peppers
§ Freshness Facts
1|peppers-bell|storage 45..50 °F ; freezing 31 °F ; humidity 90..95 % ; life 2..3 weeks ; chilling 40 °F (significant chill injury)
@ purdue-poinsettias
§ Shipping and retail display points
1|poinsettias|transport 50.. °F
@ nc-state-poinsettias
§ Physiological Disorders
1|poinsettias|chilling 50 °F
`;
