/**
 * Carbon dioxide produced, one line each: key, source, unit per kg and hour, and the rates at 0, 5, 10, 15 and 20
 * °C as published: one value or a range, a dash where none is published. A commodity is listed twice where sources
 * differ.
 */
export const respirationTable = `
broccoli | UCD | mL | 10-11 | 16-18 | 38-43 | 80-90 | 140-160
lettuce-iceberg | UCD | mL | 3-8 | 6-10 | 11-20 | 16-23 | 25-30
lettuce-romaine | UCD | mL | - | 9-12 | 15-20 | 19-25 | 30-38
celery | UCD | mL | 3 | 5 | 12 | 17 | 32
cauliflower | UCD | mL | 8-9 | 10-11 | 16-18 | 21-25 | 37-42
spinach | UCD | mL | 9-11 | 17-29 | 41-69 | 67-111 | 86-143
asparagus | UCD | mL | 14-40 | 28-68 | 45-152 | 80-168 | 138-250
strawberries | UCD | mL | 6-10 | - | 25-50 | - | 50-100
blueberries | UCD | mL | 3 | - | 9 | - | 34
raspberries | UCD | mL | 12 | - | 49 | - | 100
grapes-table | UCD | mL | 1-2 | 3-4 | 5-8 | - | 12-15
oranges-california-arizona | UCD | mL | - | 2-4 | 3-5 | 6-12 | 11-17
cucumbers | UCD | mL | - | - | 12-15 | 12-17 | 7-24
avocados-hass | UCD | mL | - | 10-25 | 25-80 | - | 40-150
mangoes | UCD | mL | - | - | 12-16 | 19-28 | 35-80
bananas-green | UCD | mL | - | - | - | 12-40 | 20-70
pears-bartlett | UCD | mL | 2-3 | 6-8 | - | - | 15-35
apples | M | mg | 3 | 6 | 9 | 15 | 20
asparagus | M | mg | 60 | 105 | 215 | 235 | 270
broccoli | M | mg | 21 | 34 | 81 | 170 | 300
cabbage | M | mg | 5 | 11 | 18 | 28 | 42
carrots | M | mg | 15 | 20 | 31 | 40 | 25
cauliflower | M | mg | 17 | 21 | 34 | 46 | 79
celery | M | mg | 15 | 20 | 31 | 40 | 71
cherries-sweet | M | mg | 8 | 22 | 28 | 46 | 65
grapes-table | M | mg | 3 | 7 | 13 | - | 27
lettuce-iceberg | M | mg | 12 | 17 | 31 | 39 | 56
lettuce-leaf | M | mg | 23 | 30 | 39 | 63 | 101
mushrooms | M | mg | 36 | 70 | 97 | - | 264
onions-dry | M | mg | 3 | 5 | 7 | 7 | 8
spinach | M | mg | 21 | 45 | 110 | 179 | 230
strawberries | M | mg | 16 | - | 75 | - | 150
sweet-corn | M | mg | 41 | 63 | 105 | 159 | 261
tomatoes-ripe | M | mg | - | - | 15 | 22 | 35
blueberries | M | mg | 6 | 11 | 29 | 48 | 70
`;
