using System.Runtime.CompilerServices;
using Mono.Cecil;
using Mono.Cecil.Cil;
using Mono.Cecil.Rocks;
using SplitBatch.Kernel.Cells;

namespace SplitBatch.Kernel.Engine;

/// <summary>
/// Puts looks into a compiled cell, so that it can be stopped without force: at the start of every method and at the head of every loop.
/// Calls that would end the process, or start another whose output nobody sees, go to <see cref="ProcessCalls"/>.
/// </summary>
internal static class CellWeaver
{
    private static readonly string AsyncStart = typeof(AsyncStateMachineAttribute).FullName!;
    private static readonly string AsyncStep = typeof(IAsyncStateMachine).FullName!;

    /// <summary>Weaves an image.</summary>
    /// <param name="image">The compiled cell.</param>
    /// <param name="lines">Its line numbers; they stay as they are.</param>
    public static (MemoryStream Image, MemoryStream? Lines) Weave(MemoryStream image, MemoryStream? lines)
    {
        image.Position = 0;
        lines?.Position = 0;
        var reading = new ReaderParameters { InMemory = true };
        if (lines is not null) (reading.ReadSymbols, reading.SymbolStream, reading.SymbolReaderProvider)
            = (true, lines, new PortablePdbReaderProvider());
        using var module = ModuleDefinition.ReadModule(image, reading);
        var looks = new Looks(module);
        foreach (var method in module.GetTypes().SelectMany(t => t.Methods).Where(m => m.HasBody)) Weave(method, looks);
        var (woven, wovenLines) = (new MemoryStream(), lines is null ? null : new MemoryStream());
        var writing = new WriterParameters();
        if (lines is not null) (writing.WriteSymbols, writing.SymbolStream, writing.SymbolWriterProvider)
            = (true, wovenLines, new PortablePdbWriterProvider());
        module.Write(woven, writing);
        woven.Position = 0;
        wovenLines?.Position = 0;
        return (woven, wovenLines);
    }

    private static void Weave(MethodDefinition method, Looks looks)
    {
        var body = method.Body;
        body.SimplifyMacros();
        var il = body.GetILProcessor();
        var place = body.Instructions.Select((i, n) => (i, n)).ToDictionary(p => p.i, p => p.n);
        var heads = body.Instructions.SelectMany(from => Targets(from).Where(to => place[to] <= place[from])).ToHashSet();
        foreach (var call in body.Instructions.Where(i => i.OpCode == OpCodes.Call || i.OpCode == OpCodes.Callvirt))
        {
            if (looks.InPlaceOf((MethodReference)call.Operand) is { } other) (call.OpCode, call.Operand) = (OpCodes.Call, other);
        }

        foreach (var head in heads)
        {
            // The old head becomes the look, so that branches, ends of try blocks and line numbers stay where they are.
            var moved = il.Create(OpCodes.Nop);
            (moved.OpCode, moved.Operand) = (head.OpCode, head.Operand);
            (head.OpCode, head.Operand) = (OpCodes.Call, looks.Loop);
            il.InsertAfter(head, moved);
        }

        var first = body.Instructions[0];
        if (method.DeclaringType.Interfaces.Any(i => i.InterfaceType.FullName == AsyncStep))
        {
            if (method.Name == "MoveNext")
            {
                il.InsertBefore(first, il.Create(OpCodes.Call, looks.Leave));
                il.InsertBefore(first, il.Create(OpCodes.Brfalse, first));
                il.InsertBefore(first, il.Create(OpCodes.Ret));
            }
        }
        else if (!(method.IsConstructor && method.IsStatic) && !method.CustomAttributes.Any(a => a.AttributeType.FullName == AsyncStart))
        {
            // Not before a static constructor: a type whose first use is interrupted could never be used again. Nor before an async method
            // has begun, whose first step looks.
            var calls = body.Instructions.Any(i => i.OpCode.FlowControl == FlowControl.Call && i.Operand != looks.Loop);
            il.InsertBefore(first, il.Create(OpCodes.Call, calls ? looks.Enter : looks.Loop));
        }

        body.OptimizeMacros();
    }

    private static Instruction[] Targets(Instruction from) => from.Operand switch
    {
        Instruction to => [to],
        Instruction[] many => many,
        _ => [],
    };

    /// <summary>What is put into one module.</summary>
    private sealed class Looks(ModuleDefinition module)
    {
        private readonly Dictionary<string, MethodReference?> others = new(StringComparer.Ordinal);

        public MethodReference Loop { get; } = module.ImportReference(typeof(CellGuard).GetMethod(nameof(CellGuard.Loop)));

        public MethodReference Enter { get; } = module.ImportReference(typeof(CellGuard).GetMethod(nameof(CellGuard.Enter)));

        public MethodReference Leave { get; } = module.ImportReference(typeof(CellGuard).GetMethod(nameof(CellGuard.Leave)));

        /// <summary>What is called in place of a method; null where it is called itself.</summary>
        public MethodReference? InPlaceOf(MethodReference called)
        {
            if (called.DeclaringType.FullName is not ("System.Environment" or "System.Diagnostics.Process")) return null;
            if (others.TryGetValue(called.FullName, out var known)) return known;
            var wanted = called.Parameters.Select(p => p.ParameterType.FullName).ToList();
            if (called.HasThis) wanted.Insert(0, called.DeclaringType.FullName);
            var found = typeof(ProcessCalls).GetMethods().FirstOrDefault(m => m.Name == called.Name
                && module.ImportReference(m).Parameters.Select(p => p.ParameterType.FullName).SequenceEqual(wanted));
            return others[called.FullName] = found is null ? null : module.ImportReference(found);
        }
    }
}
