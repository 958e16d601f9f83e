/** Sentences and table cells that values stand in, of USDA Agriculture Handbooks 66 and 668, by edition and copy; numbered as in ../values/handbooks.ts. */
export const handbooks = `
@ handbook-66-1968
1|Apples 30 - 40 90 3 - 8 months 29.3 84.1 0.87
2|Apricots 31 - 32 90 1 - 2 weeks30.1 85.4 0.88
3|Avocados 40 - 55 85 - 90 2 - 4 weeks 31.5 65.4 0.72
4|Bananas 56 - 58 90 - 95 ---------30.6 74.8 0.80
5|Blackberries 31 - 32 90 - 95 2 - 3 days 30.5 84.8 0.88
6|Blueberries 31 - 32 90 - 95 2 weeks 29.7 82.3 0.86
7|Cranberries 36 - 40 90 - 95 2 - 4 months 30.4 87.4 0.90
8|Currants 31 - 32 90 - 95 1 - 2 weeks 30.2 84.7 0.88
9|Dewberries 31 - 32 90 - 95 2 - 3 days29.7 84.5 0.88
10|Elderberries 31 - 32 90 - 95 1 - 2 weeks -79.8 0.84
11|Gooseberries 31 - 32 90 - 95 2 - 4 weeks 30.0 88.9 0.91
12|Loganberries 31 - 32 90 - 95 2 - 3 days 29.7 83.0 0.86
13|Raspberries 31 - 32 90 - 95 ---------30.0 80.6 0.85
14|Strawberries 32 90 - 95 5 - 7 days 30.6 89.9 0.92
15|Cherries, sour 32 90 - 95 3 - 7 days 29.0 83.7 0.87
16|Cherries,sweet 30 - 31 90 - 95 2 - 3 weeks 28.8 80.4 0.84
17|Coconuts 32 - 35 80 - 85 1 - 2 months 30.4 46.9 0.58
18|Figs, fresh 31 - 32 85 - 90 7 - 10 days 27.6 78.0 0.82
19|Grapefruit 50 85 - 90 ---------30.0 88.8 0.91
20|Vinifera 30 - 31 90 - 95 3 - 6 months 28.1 81.6 0.85
21|American 31 - 32 85 2 - 8 weeks 29.7 81.9 0.86
22|Guavas 45 - 50 90 2 - 3 weeks -83.0 0.86
23|Lemons ------85 - 90 1 - 6 months 29.4 89.3 0.91
24|Limes 48 - 50 85 - 90 6 - 8 weeks 29.1 86.0 0.89
25|Mangos 55 85 - 90 2 - 3 weeks 30.3 81.4 0.85
26|Nectarines 31 - 32 90 2 - 4 weeks 30.4 81.8 0.85
27|Oranges 32 85 - 90 8 - 12 weeks 30.6 87.2 0.90
28|Papayas 45 85 - 90 1 - 3 weeks 30.4 90.8 0.93
29|Peaches 31 - 32 90 2 - 4 weeks 30.3 89.1 0.91
30|Pears 29 - 31 90 - 95 2 - 7 months 29.2 82.7 0.86
31|Persimmons 30 90 3 - 4 months 28.1 78.2 0.83
32|Pineapples 45 - 55 85 - 90 2 - 4
@ handbook-66-1954
1|Asparagus 32 90-95 1-2
2|Bean 45-50 85-90 1-2
3|Bean, lima, unshelled 32 90-95 2
4|Beet, topped(3) 32 90-95 7-8
5|Broccoli 32 90-95 1-2
6|Brussels sprouts 32 90-95 4
7|Cabbage 32 90-95 12-16
8|Carrot, topped(3) 32 90-95 16-20
9|Cauliflower 32 90-95 3-4
10|Chinese cabbag(4) 32 90-95 8-12
11|Corn 32 90-95 1/2-1
12|Cucumber 50-55 90-95 2-4
13|Eggplant 50-55 85-90 1-2
14|Kohlrabi 32 90-95 4-8
15|Lettuce, head 32 90-95 2-4
16|Melon - Casaba 50-55 85-90 4-8
17|Crenshaw and Persian 45-50 85-90 1-2
18|Honey Dew 50-55 85-90 2-4
19|Muskmelon 45-50 85-90 1-2
20|Okra 45-50 85-90 1-2
21|Onion, dry 32 70-75 28
22|Parsnip, topped(3) 32 90-95 24-26
23|Pea 32 85-90 1-2
24|Pepper, sweet 45-50 85-90 1-2
25|Potato(6) 38-40 85-90 24-26
26|Pumpkin 50-55 70-75 12-26
27|Radish, spring, bunched 32 90-95 1-2
28|Radish, winter 32 90-95 8-16
29|Rhubarb 32 90-95 1-2
30|Rutabaga, topped(3) 32 90-95 8-16
31|Spinach 32 90-95 1-2
32|Squash, summer 45-50 85-95 1/2-1
33|Squash, winter(7) 50-55 70-75 24-26
34|Tomato, mature green 55-60 85-90 1-2
35|Tomato, ripe 45-55 85-90 1-2
36|Turnip, topped(3) 32 90-95 16-22
37|Watermelon 50-55 85-90 1-4
@ handbook-66-southern-pea
1|Southern peas in the pod can be held for 6 to 8 days at 4 to 5 °C (39 to 41 °F) with 95% RH.
2|Unknown, probably sensitive when held at 5 °C (41 °F) or below.
3|2 °C 12.5 to 36.3 25.5 to 33.3
4|5 °C 15.9 to 33.4 -
5|20 °C 144.8 to 150.9 89.8 to 161.2
@ handbook-66-watermelon
1|Watermelons develop chilling injury when stored below about 10 °C for more than a few days.
@ handbook-668
1|Group 1: Fruits and vegetables, 0 to 2°C (32 to 36°F) , 90-95% relative humidity.
2|Group 1: Fruits and vegetables, 0 to 2°C (32 to 36°F) , 90-95% relative humidity.
3|Group 1: Fruits and vegetables, 0 to 2°C (32 to 36°F) , 90-95% relative humidity.
4|Group 1: Fruits and vegetables, 0 to 2°C (32 to 36°F) , 90-95% relative humidity.
5|Group 2: Fruits and vegetables, 0 to 2°C (32 to 36°F) , 95-100% relative humidity.
6|Group 2: Fruits and vegetables, 0 to 2°C (32 to 36°F) , 95-100% relative humidity.
7|Group 2: Fruits and vegetables, 0 to 2°C (32 to 36°F) , 95-100% relative humidity.
8|Group 3: Fruits and vegetables, 0 to 2°C (32 to 36°F) , 65-75% relative humidity.
9|Group 4: Fruits and vegetables, 4.5°C (40°F) , 90-95% relative humidity.
@ handbook-66-lemon
1|Lemons should be stored between 7 to 12 C depending on cultivar, maturity-ripeness stage at harvest, production area, and duration of storage and transport (can be up to 6 months).
2|The optimal relative humidity is 85 to 95 percent.
3|Because lemons are chilling sensitive, they must not be stored below 7 C.
`;
