using SplitBatch.Bitterness;
using SplitBatch.Brewing;

var kettle = Kettle.Metric(liters: 20, gravity: 1.048, boilMinutes: 60);
Console.WriteLine(
    ChargeMatch.Solve(kettle, target: 28, HopLot.Cones("cones", alphaPercent: 5.8), HopLot.Pellets("pellets", alphaPercent: 9.4)));
