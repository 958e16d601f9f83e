/** Sentences and table cells that values stand in, of tables of freezing points and specific heats; numbered as in ../values/thermal.ts. */
export const thermal = `
@ ashrae-thermal
1|Artichokes, globe 84.94 ... –1.2 3.90 2.02 284
2|Jerusalem 78.01 ... –2.5 3.63 2.25 261
3|Asparagus 92.40 ... –0.6 4.03 1.79 309
4|Beans, snap 90.27 ... –0.7 3.99 1.85 302
5|lima 70.24 ... –0.6 3.52 2.07 235
6|Beets 87.58 ... –1.1 3.91 1.94 293
7|Broccoli 90.69 ... –0.6 4.01 1.82 303
8|Brussels sprouts 86.00 ... –0.8 3.90 1.91 287
9|Cabbage 92.15 ... –0.9 4.02 1.85 308
10|Carrots 87.79 ... –1.4 3.92 2.00 293
11|Cauliflower 91.91 ... –0.8 4.02 1.84 307
12|Celeriac 88.00 ... –0.9 3.90 1.89 294
13|Celery 94.64 ... –0.5 4.07 1.74 316
14|Collards 90.55 ... –0.8 4.01 1.86 302
15|Corn, sweet, yellow 75.96 ... –0.6 3.62 1.98 254
16|Cucumbers 96.01 ... –0.5 4.09 1.71 321
17|Eggplant 92.03 ... –0.8 4.02 1.83 307
18|Endive 93.79 ... –0.1 4.07 1.69 313
19|Garlic 58.58 ... –0.8 3.17 2.19 196
20|Ginger, root 81.67 ... 3.75 1.94 273
21|Horseradish 78.66 ... –1.8 3.70 2.12 263
22|Kale 84.46 ... –0.5 3.82 1.86 282
23|Kohlrabi 91.00 ... –1.0 4.02 1.90 304
24|Leeks 83.00 ... –0.7 3.77 1.91 277
25|Lettuce, iceberg 95.89 ... –0.2 4.09 1.65 320
26|Mushrooms 91.81 ... –0.9 3.99 1.84 30
@ thermal-table
1|Beans, snap | 30.7 | 0.95
2|Carrots | 29.5 | 0.94
3|Corn | 30.9 | 0.86 | 0.47 | 109
4|Peas, green | 30.9 | 0.9 | 0.47 | 113
5|Brussels sprouts | 30.6 | 0.93
6|Apples, fresh | 30.0 | 0.91 | 0.47 | 120
7|Apricots | 30.0 | 0.92
8|Bananas | 30.6 | 0.85
9|Blackberries | 30.6 | 0.93
10|Blueberries | 29.1 | 0.91
11|Cherries, sour | 28.9 | 0.92
12|sweet | 28.8 | 0.89 | 0.51 | 116
13|Cranberries | 30.4 | 0.93
14|Oranges | 30.6 | 0.91
15|Peaches, fresh | 30.4 | 0.93 | 0.45 | 126
16|Pears | 29.1 | 0.91
17|Raspberries | 30.9 | 0.95 | 0.46 | 124
18|Strawberries | 30.6 | 0.96
19|Cod | 28.0 | 0.9 | 0.51 | 117
20|Haddock | 28.0 | 0.9
21|Halibut | 28.0 | 0.89
22|Herring, kippered | 28.0 | 0.78 | 0.54 | 86
23|Mackerel, Atlantic | 28.0 | 0.8
24|Perch | 28.0 | 0.89
25|Pollock, Atlantic | 28.0 | 0.88
26|Salmon, pink | 28.0 | 0.88
27|Carcass, choice | 28.0 | 0.77 | 0.55 | 82
28|Sirloin, lean | 28.9 | 0.84 | 0.5 | 103
@ ashrae-storage
1|-0.4 Very low Low Low 10 to 14 days
2|-0.9 Very low Low Low 4 months
3|-1.1 Moderate Moderate Low 1 to 3 weeks
4|-1.5 Very high High Low 3 to 6 months
5|-1.5 Very high High Low 1 to 2 months
6|-0.5 to 0 90 to 95 -0.8 Low Low Moderate 3 to 6 days
7|-0.5 to 0 90 to 95 -1.1 Moderate Moderate Low 1 to 3 weeks
8|Malus pumila -1 90 to 95 -1.5 Very high High Low 3 to 6 months
9|90 to 95 -1.5 Very high High Low 1 to 2 months
@ nc-state-heat
1|Apples, summer 0.87 0.018 0.340 30-40
2|Apples, fall 0.87 0.012 0.240 30-40
3|Asparagus 0.94 0.245 2.523 32-35
4|Beans, butter 0.73 0.123 0.716 37-41
5|Beans, string 0.91 0.161 0.885 40-45
6|Beets, topped 0.90 0.028 0.092 32
7|Beets, topped 0.90 0.028 0.092 32
8|Blueberries 0.86 0.028 0.748 31-32
9|Brambles 0.87 0.092 0.711 31-32
10|Broccoli 0.92 0.092 1.376 32
11|Cabbage 0.94 0.023 0.257 32
12|Cantaloupes 0.94 0.025 0.305 36-41
13|Cucumbers 0.97 0.119 0.170 50-55
14|Grapes 0.86 0.014 0.179 31-32
15|Green Onions 0.91 0.096 0.704 32
16|Leafy Greens 0.90 0.100 1.034 32
17|Okra 0.92 0.257 1.583 45-50
18|Peaches 0.91 0.023 0.466 31-32
19|Peas, garden 0.79 0.177 1.651 36
20|Peas, field 0.73 0.160 1.554 40
21|Peppers 0.94 0.046 0.252 45
22|Potatoes 0.84 0.028 0.055 38
23|Squash 0.95 0.161 0.751 41-50
24|Strawberries 0.92 0.069 0.872 32
25|Sweet Corn 0.79 0.186 1.644 32
26|Tomatoes, mature gr. 0.94 0.030 0.197 55-70
27|Tomatoes, mature gr. 0.94 0.030 0.197 55-70
28|Tomatoes, ripening 0.95 0.067 0.188 46-50
29|Tomatoes, ripening 0.95 0.067 0.188 46-50
30|Turnips 0.93 0.034 0.130 32
31|Watermelons 0.94 0.034 0.110 40
@ engineering-manual
1|Apples 30-40 90 3-8 months 29.3 0.87 28
2|Apricots 31-32 90 1-2 weeks 30.1 0.88 30
3|Artichokes (Globe) 31-32 95 2 weeks 29.9 0.87
4|Asparagus 32-36 95 2-3 weeks 30.9 0.94 25
5|Avocados 45-55 85-90 2-4 weeks 31.5 0.72 19
6|Bananas 55-65 85-90 30.6 0.80
7|Beans (Green or Snap) 40-45 90-95 7-10 days 30.7 0.91 14
8|Lima 32-40 90 1 week 31.0 0.73
9|Beets, Topped 32 95-100 4-6 months 30.1 0.90 23
10|Blackberries 31-32 95 3 days 30.5 0.88 19
11|Blueberries 31-32 90-95 2 weeks 29.7 0.86 19
12|Broccoli, Sprouting 32 95 10-14 days 29.0 0.92 13
13|Brussels Sprouts 32 95 3-5 weeks 30.5 0.88
14|Cabbage 32 95-100 3-4 months 30.4 0.94 17
15|Carrots, Topped, Mature 32 98-100 5-9 months 29.5 0.90 22
16|Cauliflower 32 95 2-4 weeks 29.0 0.93 16
17|Celery 32 95 1-2 months 31.1 0.95 30
18|Cherries, Sour 31-32 90-95 3-7 days 29.0 0.87 18
19|Sweet 30-31 90-95 2-3 weeks 28.8 0.84
20|Chocolate (Coating) 50-65 40-50 2-3 months 0.55
21|Coconut 32-45 80-85 1-2 months 30.4 0.58
22|Collards 32 95 10-14 days 30.6 0.90
@ thermal-table-cengel
1|Apples 84 1.1 3.65 1.90 281
2|Lettuce 95 0.2 4.02 2.04 317
3|Bananas 75 0.8 3.35 1.78 251
4|Milk, whole 88 0.6 3.79 1.95 294
5|Oranges 87 0.8 3.75 1.94 291
6|Broccoli 90 0.6 3.86 1.97 301
7|Potatoes 78 0.6 3.45 1.82 261
8|Salmon fish 64 2.2 2.98 1.65 214
9|Beef round 67 3.08 1.68 224
@ earle
1|Apples | -2 | ... | 3.60
2|Bananas | -2 | ... | 3.35
3|Grapefruit | -2 | ... | 3.81
4|Peaches | -2 | ... | 3.78
5|Pineapples | -2 | ... | 3.68
6|Watermelons | -2 | ... | 4.06
7|Asparagus | -1 | ... | 3.93
8|Beans (green) | -1 | ... | 3.81
9|Cabbage | -1 | ... | 3.93
10|Carrots | -1 | ... | 3.60
11|Corn | -1 | ... | 3.35
12|Peas | -1 | ... | 3.31
13|Tomatoes | -1 | ... | 3.98
14|Beef | -2 | ... | 3.22
15|Fish | -2 | ... | 3.18
16|Lamb | -2 | ... | 3.18
17|Pork | -2 | ... | 2.85
18|Veal | -2 | ... | 2.97
19|Eggs | -3 | ... | 3.2
20|Milk | -1 | ... | 3.9
21|Ice cream | -3 to -18 | 58-66 | 3.3 | 1.88 | 222
@ geankoplis
1|Apples75–853.73–4.02
2|Fresh933.94[†]
3|Cantaloupe92.73.94[†]
4|Carrot88.23.81–3.94
5|Corn, sweet Fresh 3.32[†]
6|Cucumber974.10
7|Eggs Fresh 3.18[†]
8|Ice cream Fresh58–663.27[†]
9|Lamb703.18[*]
10|Whole87.53.85
11|Oranges Fresh87.23.77[†]
12|Peas, green Fresh74.33.31[†]
13|Plums75–783.52
14|Pork Fresh602.85[†]
15|Potatoes753.52
16|Poultry Fresh743.31[†]
17|String beans Fresh88.93.81[†]
18|Tomatoes953.98[†]
19|Veal 633.22
20|Butter152.30[¶]
`;
