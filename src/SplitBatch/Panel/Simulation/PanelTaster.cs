using SplitBatch.Numbers;
using SplitBatch.Panel.Protocols;

namespace SplitBatch.Panel.Simulation;

/// <summary>Lets a panel taste: draws what each taster can tell, goes through the sets, and adds up.</summary>
internal sealed class PanelTaster(Protocol protocol, SimulatedTasters model, int replicates)
{
    private readonly TastingKernels.Kernel kernel = TastingKernels.For(protocol);
    private readonly SetDesign design = SetDesign.For(protocol);
    private readonly ServingOrder[] orders = [.. ServingOrders.For(protocol)];
    private readonly double chance = protocol.CorrectShare(0);

    /// <summary>Nothing but the draws of the cups is random: all the sets of a taster can be tasted in one go.</summary>
    private readonly bool isPlain = model is { HasPositionBias: false, Guessing: 0, Fatigue: 0, DropOut: 0 };

    /// <summary>One panel: how many answers came in and how many of them were right.</summary>
    internal (int Counted, int Correct) Panel(ref SeededRandom random, int tasters)
    {
        if (isPlain && model is { NoShow: 0, DPrime: DPrimeSpread.All all })
            return (tasters * replicates, kernel(ref random, all.DPrime, tasters * replicates));
        int counted = 0, correct = 0;
        for (int i = 0; i < tasters; i++)
        {
            double d = model.DPrime.Draw(ref random);
            if (model.NoShow > 0 && random.NextShare() < model.NoShow) continue;
            if (isPlain)
            {
                counted += replicates;
                correct += kernel(ref random, d, replicates);
                continue;
            }
            for (int k = 0; k < replicates; k++)
            {
                if (k > 0 && model.DropOut > 0 && random.NextShare() < model.DropOut) break;
                counted++;
                if (IsRight(ref random, d)) correct++;
                d *= 1 - model.Fatigue;
            }
        }
        return (counted, correct);
    }

    private bool IsRight(ref SeededRandom random, double d)
    {
        if (!model.HasPositionBias)
            return model.Guessing > 0 && random.NextShare() < model.Guessing ? random.NextShare() < chance : kernel(ref random, d, 1) == 1;
        var order = orders[random.NextBelow(orders.Length)];
        return Perception.Decide(ref random, order, design, Side.B, d, model).IsRight(order, design, Side.B);
    }
}
