/** Sentences and table cells that values stand in, of authorities and research bodies outside the United States; numbered as in ../values/other-countries.ts. */
export const otherCountries = `
@ south-africa-pome
1|RA-storage: core temperature must be -0,5 °C within 48 hours of harvest Hold temperature at -0,5°C for duration of storage
2|Must be between 90% and 95%.
@ western-australia
1|Apricot** | -0.5-0 | 85-95 | 1-3 weeks | 0
2|Avocado | 0-2 4.5-13 | 90-95 85-95 | 10 days 2-4 weeks | 2 | Green Ripe
3|Blackberry | -0.5-0 | 85-100 | 2-3 days | 0
4|Blueberry | -0.5-0 | 90-100 | 2 weeks | 0
5|Boysenberry | 0 | 90-100 | 2-3 days | 0
6|Carambola | 10-15 | 90 | 5 weeks | — | Starfruit
7|Cherry | 0 | 90-95 | 3-7 days | 0 | Sour
8|Cherry | -1-0 | 85-95 | 2-4 weeks | 0 | Sweet
9|Chico | 15 | 85-95 | 2 weeks
10|Coconut | 0-2 | 80-95 | 4-8 weeks
11|Cranberry | 2-4.5 | 90-100 | 12-16 weeks
12|Custard apple** | 10-20 | 85-90 | 2-3 weeks | 10
13|Currant | -0.5-0 | 90-95 | 1-2 weeks
14|Date | 0-32 | <75 | 24-48 weeks | — | Varieties differ
15|Duku | 10 | 85-90 | 2 weeks
16|Durian | 10 | 90 | 1 week
17|Feijoa | 0-4 | — | 4-5 weeks | 4
18|Fig** | -1-0 | 85-95 | 1-3 weeks | 0 | Fresh
19|Gooseberry | -0.5-0 | 90-95 | 1-4 weeks
20|Grapefruit | 10-16 | 85-90 | 4-10 weeks | 13
21|Grapes | -1-0 | 85-95 | 12-24 weeks | 0
22|Guava | 7-10 | 90 | 2-3 weeks
23|Kiwifruit** | -0.5-0 | 90-95 | 8-16 weeks | 0
24|Langsat | 11-14 | 85-90 | 2 weeks
25|Lime 7-10 85-90 4-10 weeks 10
26|Loganberry -0.5-0 90-100 2-3 days 0
27|Lychee 0-2 90-100 3-8 days 0
28|Artichoke, globe** 0 90-100 3-4 weeks 0
29|Artichoke, Jerusalem -0.5-0 90-95 8-20 weeks
30|Asparagus* 0-2.5 85-100 2-4 weeks 2
31|Bean* 4-10 85-100 1-3 weeks 7 Green, French
32|Bean, Lima 0-4.5 90 1-2 weeks
33|Beetroot, bunched 0 95 1-2 weeks
34|Beetroot, topped 0 90-100 4-20 weeks 0
35|Beetroot, topped 0 90-100 4-20 weeks 0
36|Broccoli* 0 90-100 1-2 weeks 0
37|Brussels sprout* 0 90-100 2-5 weeks 0
38|Cabbage, early* 0 90-95 3-6 weeks 0
39|Cabbage, late* 0 90-100 4-16 weeks 0
40|Cabbage, Chinese 0 90-95 4-8 weeks
41|Capsicum 7-10 90-95 2-3 weeks 7
42|Carrot, bunched* 0 90-100 2-3 weeks
43|Carrot, topped* 0 90-100 16-20 weeks
44|Carrot, immature* 0 90-100 4-6 weeks - Topped
45|Cauliflower* 0 90-100 2-4 weeks 0
46|Celeriac 0 90-95 12-16 weeks
47|Celery* -0.5-0 90-100 4-16 weeks 0
48|Choko 10.5 90-95 10-12 weeks
49|Collard 0 90-95 10-14 days
50|Corn, sweet* -0.5-0 85-100 4-14 days 0
51|Cucumber* 7-12 85-100 7-10 days 7
52|Eggplant 7-10 90-95 7-10 days 7
53|Endive* 0 90-100 3-3 weeks 0
54|Garlic, dry 0 65-75 24-28 weeks 0
55|Ginger 13 65 24 weeks - Rhizome
56|Greens, leafy* 0 90-100 1-2 weeks 0 e.g. kale
57|Horseradish -1-0 90-100 40-48 weeks
58|Kale 0 90-95 10-14 days
59|Kohlrabi 0 90-100 2-4 weeks
60|Leek, green 0 90-100 4-12 weeks
61|Lettuce* 0 90-100 1-2 weeks
62|Melon, rock** 0-7 85-90 1-2 weeks 5
63|Melon, honeydew** 7-10 85-90 3-4 weeks
64|Mushroom 0 85-100 3-10 days 0
65|Okra* 7-10 90-95 7-14 days 7
66|Onion, dry 0 65-75 4-32 weeks 0
67|Parsley* 0 90-100 4-8 weeks 0
68|Parsnip, topped 0-1 90-100 8-24 weeks 0
69|Pea, green -0.5-0 85-100 1-3 weeks 0
70|Pepper, chilli 0-10 60-70 24 weeks - Dry
71|Pepper, sweet 7-10 85-90 8-21 days
72|Potato, chipping* 13 90-95 4-8 week
@ postharvest-australia
1|Asian leafy - buk choy 2 95-100 3 weeks 2-3 weeks
2|Asian leafy - choy sum 2 95-100 3 weeks 10-14 days
3|Asian leafy − gai lan 2 95−100 2 weeks 7−10 days
4|Asian leafy − pak choy 2 95−100 3 weeks 10−14 days
5|Asian leafy − wombok 0 95−100 3 months 3 months
6|Baby spinach 2 95−100 3 weeks 2−3 weeks
7|Beans 7-10 90−95 7−12 days 6−8 days
8|Broccoli 0 95−100 6 weeks 2-3 weeks
9|Brussels sprout 0 95−100 4 weeks 1-3 weeks
10|Cabbage 0 95−100 8 weeks 2−3 weeks
11|Capsicum − green 2−5 90−95 2−3 weeks 2−3 weeks
12|Capsicum − red 1−4 90−95 3−4 weeks 2−3 weeks
13|Carrot 0 95−100 6 weeks 2−3 weeks
14|Cauliflower 0 95−100 3 weeks 7−12 days
15|Celery 2 95−100 6 weeks 2−4 weeks
16|Cucumber – green field 6−9 90−95 2−4 weeks 2−3 weeks
17|Cucumber − Lebanese 10−12 90−95 10−16 days 5−10 days
18|Eggplant 10−14 90−95 10−16 days 6−12 days
19|Green onions 0 95-100 3 weeks 2−3 weeks
20|Kale 0 95-100 3 weeks 7−10 days
21|Leek 0 95-100 12 weeks 3−4 weeks
22|Lettuce − hearting 2 95-100 3 weeks 1−2 weeks
23|Lettuce − loose leaf 2 95-100 2 weeks 1−2 weeks
24|Parsnip 0 95−100 6 weeks 2−3 weeks
25|Pea, edible pod 0 90−95 3 weeks 2−3 weeks
26|Pumpkin 20 70-80 2−3 months 2−3 weeks
27|Rocket 2 95−100 3 weeks 2−3 weeks
28|Silverbeet 0 95-100 2 weeks 7−10 days
29|Squash (pattypan) 8−10 90−95 8−12 days 6−10 days
30|Sweet corn 0 95−100 2 weeks 3−5 days
31|Sweetpotato 16−18 80−90 2 months 7−10 days
32|Zucchini 6−10 90−95 10−16 days 8−12 days
@ tropical-fruits
1|Acerola 0 85-90 50-58
2|Atemoya 13 85-90 28-42
3|Avocado Mexican 5 85-90 14-28
4|West Indian 10 85-90 14-28
5|Banana 14 90-95 7-28
6|Breadfruit 13 90-95 14-40
7|Carambola 1 90-95 21-28
8|Cherimoya 13 85-90 14-28
9|Durian 4 85-90 42-56
10|Guava 10 90-95 14-21
11|Jackfruit 13 90-95 14-45
12|Langsat 11 90-95 10-15
13|Litchi 1 90-95 21-35
14|Longan 2 90-95 21-35
15|Mango 10-12 85-90 14-25
16|Mangosteen 13 85-90 14-25
17|Papaya 8-12 85-90 7-21
18|Passion fruit 12 85-90 14-21
19|Pineapple 10 90-95 14-36
20|Rambutan 12 90-95 7-21
21|Sweetsop 7 85-90 28
`;
