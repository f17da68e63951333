#:package SplitBatch.Display@$VERSION
using SplitBatch.Display;
using SplitBatch.Display.Charts;
using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Protocols;

// Run by "dotnet run app.cs": counts a panel, and leaves the chart of it in count.svg.
var test = DifferenceTest.Of(Protocol.Triangle, tasters: 24, correct: 13);
Console.WriteLine(test);
File.WriteAllText("count.svg", test.Chart().ToSvg());
