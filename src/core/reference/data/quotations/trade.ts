/** Sentences and table cells that values stand in, of the trade, textbooks and web pages; numbered as in ../values/trade.ts. */
export const trade = `
@ container-table-agile
1|Apples | -1 to 4 | 90-95 | 2 to 7 months
2|Apricots | -0.5 to 0 | 90-95 | 7 to 14 days
3|Asparagus | 0 to 2 | 90-98 | 14 to 21 days
4|Avocados | 4 to 13 | 85-90 | 14 to 21 days
5|Bananas (green) | 13 to 14 | 85-95 | 18 - 22 days
6|Beans (Green, snap) | 4 to 7 | 95-98 | 7 to 10 days
7|Blueberries | -0.5 to 0 | 90-95 | 10 to 14 days
8|Cabbage (early crop) | 0 | 90-98 | 21 to 42 days
9|Cabbage (late crop) | 0 | 90-98 | 5 to 6 months
10|Carambola (Starfruit) | 5 to 7 | 90 | 21 days
11|Carrots | 0 | 90-95 | 28 to 180 days
12|Cauliflower | 0 | 90-98 | 14 to 21 days
13|Celery | 0 | 90-95 | 14 to 42 days
14|Cherries (sweet) | 0 | 90-95 | 14 to 21 days
15|Clemantines | 0 to 4 | 85-90 | 7 to 50 days
16|Coconuts | 0 to 2 | 75-85 | 1 to 2 months
17|Cucumbers | 10 to 13 | 90-95 | 10 to 14 days
18|Eggplants | 8 to 12 | 90-95 | 7 to 14 days
19|Figs (fresh) | -0.5 to 0 | 85-90 | 7 to 10 days
20|Garlic | 1 | 60-70 | 6 to 7 months
21|Ginger | 13 | 65-75 | 4 to 6 months
22|Grapefruit | 10 to 15 | 85-90 | 1 to 2 months
23|Grapes | 2 | 90-95 | 1 to 5 months
24|Kiwi fruit | 0 | 90-95 | 2 to 3 months
25|Lemons | 11 to 15 | 85-95 | 1 to 3 months
26|Lettuce (iceberg) | 0 | 90-95 | 14 to 21 days
27|Limes | 8 to 10 | 85-90 | 14 to 35 days
28|Lychees | 2 to 6 | 90-95 | 21 to 35 days
29|Mandarin Oranges | 4 to 8 | 90-95 | 21 to 56 days
30|Mangoes | 10 to 14 | 85-95 | 14 to 21 days
31|Melons (Cantaloupes) | 3 to 5 | 90-95 | 7 to 14 days
@ container-table-apl
1|Cabbage, 21-42 32-36 0-2.2 15 good 31- -0.6 to 5 30.4
2|Cabbage, 90-180 32-36 0-2.2 15 good 31- -0.6 to 5 30.4
3|Cantaloupe 12-21 37-41 2.8-5 30 fair 36- 2.2 to 10 29.9
4|Carrots, 28-180 32-41 0-5 15 slight 30- -1.1 to 29.5
5|Cauliflower 21 33 0.6 30 fair 31- -0.6 to 5 30.6
6|Celeriac 180-240 33-34 0.6-1.1 15 slight 31- -0.6 to 5 30.3
7|Celery 35-49 33 0.6 15 fair 32- 0-5 31.1
8|Chard 10-14 34 1.1 45 none 32- 0-5 31.9
9|Chayote 28-42 45 7.2 closed none 32- 0-12.8 31
10|Chicory 14-28 33-34 0.6-1.1 45 none 31- -0.6 to 5
11|Chives 14-21 33-34 0.6-1.1 45 none 32- 0-5
12|Collards 10-14 33-34 0.6-1.1 45 none 31- -0.6 to 5 30.6
13|Corn, Sweet 7 33-34 0.6-1.1 45 good 31- -0.6 to 5 30.9
14|Cucumbers 10-14 50-55 10-12.7 15 fair 45- 7.2-15.6 30.1
15|Daikon - 60-120 34 1.1 15 none 31- -0.6 to 5
16|Dasheen - 42-140 50 10 closed none/slight 45- 7.2-12.8
17|Eggplant 10-14 50-54 10-12.2 15 fair 45- 7.2-18.3 30.6
18|Endive - 14-28 34 1.1 30 good 32- 0-5 31.9
@ cargohb-plums
1|Highest freezing point | -1°C to -2°C (depending on SSC = Soluble Solids Content)
2|Optimum carrying temperature | 0°C (cultivar dependent)
3|Optimum humidity | 90%-95%
4|Storage life | 3-6 weeks
5|Ethylene production | Medium
6|Ethylene sensitivity | High
7|At temperatures between 2° and 7°C, the internal breakdown develops rapidly and is most severe at 5°C.
@ cargohb-potatoes
1|Highest freezing point -0,8°C
2|7°C (table potatoes)
3|4° C (seed potatoes)
4|10°C (processing potatoes)
5|Optimum humidity 90% to 95%
6|2-12 months (table/processing potatoes)
7|Ethylene production Very low
8|Ethylene sensitivity Medium
9|Storage at 0°C to 2°C increases the risk of freezing or chilling injury.
@ cargohb-sweetpotatoes
1|Highest freezing point -1,9°C
2|Optimum carrying temperature +12,5°C/+15C°C
3|Optimum humidity 85% to 90%
4|Storage life 6-10 months
5|Ethylene production Very low
6|Ethylene sensitivity Low
@ bluebook-peas
1|32 to 34°F (0 to 2°C)
2|90 to 98% relative humidity
3|May be stored 7 to 10 days
4|15-8-3 14-8-3 13-7-2 11-6-1 10-5-1 32
5|Sensitive to ethylene and ice
6|33 to 35°F (0.6 to 1.7°C)
7|50% relative humidity
8|Moderately sensitive to ethylene
@ bluebook-potatoes
1|50-60° (early)
2|40-50° (late)
@ bluebook-lemons
1|15-8-5 15-8-5 14-8-4 13-7-4 12-7-3 45-55
@ bluebook-limes
1|15-8-5 14-8-5 13-7-4 11-6-3 10-5-3 48-50
@ bluebook-cucumbers
1|15-3 14-3 13-2 11-1 10-1 50-55°
@ flowers-page
1|Most cut flowers prefer temperatures at 0 to 1 degree Celsius ... with a relative humidity of 95 to 99 per cent.
2|with a relative humidity of 95 to 99 per cent
3|Tropical flowers can be sensitive to cold storage and should be stored at 10 degrees Celsius.
4|Tulips, narcissus and hyacinths store best at 0.556 to 1.67 degrees Celsius
5|stored in a floral preservative for up to two weeks at 2.22 to 4.44C, according to Kansas State University
6|Roses need to be stored at 0.556 to 1.67 degrees Celsius
@ cargohb-mushrooms
1|Highest freezing point -0,6°C
2|Optimum carrying temperature 0°C to 1°C
3|Optimum humidity 95%
4|Storage life Approx. 1 week
5|Ethylene production Very low
6|Ethylene sensitivity Medium
@ chocolate-textbook
1|Chocolate will keep for up to a year at a temperature of 18°C to 20°C (64°F to 68°F) with a relative humidity level of 60%.
@ cargohb-pears
1|Optimum carrying temperature -1,0°C to -0,5°C Highest freezing point -1,6°C Optimum humidity 90 to 95% Ethylene production High Ethylene sensitivity High
2|Storage life 1-3 months Bartlett (William's Bon Chrétien)
3|4-6 month d'Anjou
@ cargohb-peaches
1|Highest freezing point | -0,9°C | Ethylene production | High | Ethylene sensitivity | High
@ cargohb-spinach
1|Freezing injury will be initiated at - 0.3°C.
2|Ethylene production Very low Ethylene sensitivity High
@ cargohb-limes
1|Optimum carrying temperature | 8°C to 9°C | Highest freezing point | -1,6°C | Optimum humidity | 90% | Storage life | 1-2 months | Ethylene production | Very Low | Ethylene sensitivity | Moderate
`;
