using System.Collections;
using System.Reflection;
using System.Runtime.Loader;

namespace SplitBatch.Proof.Mutants;

/// <summary>What became of one slip.</summary>
/// <param name="Mutant">The slip.</param>
/// <param name="FoundBy">What noticed it; null where nothing did.</param>
/// <param name="IsReached">Whether anything came by it at all.</param>
internal sealed record MutantResult(Mutant Mutant, string? FoundBy, bool IsReached);

/// <summary>
/// Says every approved sentence anew for each slip that it comes by, and runs a room's tests for those that no sentence shows.
/// </summary>
internal sealed class MutantRun
{
    private readonly FieldInfo active;
    private readonly bool[] seen;
    private readonly IReadOnlyList<Check> sentences, tests;

    private MutantRun(string folder)
    {
        var context = new FromFolder(folder);
        var library = context.LoadFromAssemblyPath(Path.Combine(folder, "SplitBatch.dll"));
        var assembly = context.LoadFromAssemblyPath(Path.Combine(folder, "SplitBatch.Tests.dll"));
        var change = library.GetType("SplitBatch.Evidence.Mutant")!;
        (active, seen) = (change.GetField("Active")!, (bool[])change.GetField("Seen")!.GetValue(null)!);
        sentences = [.. Sentences(assembly)];
        tests = [.. Tests(assembly, "SplitBatch.Evidence", "ApprovedSentencesTests")];
    }

    /// <summary>One thing that can notice a slip: it fails, or says something else.</summary>
    private sealed record Check(string Name, Func<string> Say)
    {
        public string Usual { get; set; } = "";

        public HashSet<int> Reaches { get; } = [];
    }

    /// <summary>What became of each slip.</summary>
    public static IReadOnlyList<MutantResult> Of(MutantBuild build)
    {
        var run = new MutantRun(build.Folder);
        foreach (var check in run.sentences.Concat(run.tests))
        {
            Array.Clear(run.seen);
            try
            {
                check.Usual = check.Say();
            }
            catch (Exception error) when (error is TargetInvocationException or ArgumentException or TargetParameterCountException)
            {
                var why = error.InnerException?.Message ?? error.Message;
                Console.Error.WriteLine($"{check.Name} is left out, because it does not pass without a slip either: {why}");
                continue;
            }

            check.Reaches.UnionWith(Enumerable.Range(0, run.seen.Length).Where(id => run.seen[id]));
        }

        return [.. build.Mutants.Select(run.Judge)];
    }

    private MutantResult Judge(Mutant mutant)
    {
        active.SetValue(null, mutant.Id);
        try
        {
            Check[] near = [.. sentences.Concat(tests).Where(check => check.Reaches.Contains(mutant.Id))];
            return new(mutant, near.FirstOrDefault(Notices)?.Name, near.Length > 0);
        }
        finally
        {
            active.SetValue(null, 0);
        }
    }

    private static bool Notices(Check check)
    {
        try
        {
            return check.Say() != check.Usual;
        }
        catch (Exception)
        {
            return true;
        }
    }

    private static IEnumerable<Check> Sentences(Assembly assembly)
    {
        var files = (IEnumerable)assembly.GetType("SplitBatch.Evidence.SentenceGrid")!.GetProperty("Files")!.GetValue(null)!;
        foreach (var file in files)
        {
            foreach (var one in (IEnumerable)file.GetType().GetProperty("Value")!.GetValue(file)!)
            {
                yield return new($"sentences, {file.GetType().GetProperty("Key")!.GetValue(file)}",
                    (Func<string>)one.GetType().GetProperty("Say")!.GetValue(one)!);
            }
        }
    }

    /// <summary>Facts, and theories with their data in line.</summary>
    private static IEnumerable<Check> Tests(Assembly assembly, string room, string except)
    {
        foreach (var method in assembly.GetTypes().Where(type => type.Namespace == room && type.Name != except)
            .SelectMany(type => type.GetMethods()))
        {
            var kinds = method.GetCustomAttributesData().Select(one => one.AttributeType.Name).ToList();
            object?[][] data = kinds.Contains("FactAttribute") ? [[]]
                : [.. method.GetCustomAttributesData().Where(one => one.AttributeType.Name == "InlineDataAttribute")
                    .Select(one => ((IEnumerable<CustomAttributeTypedArgument>)one.ConstructorArguments[0].Value!)
                        .Select(argument => argument.Value).ToArray())];
            foreach (var arguments in data)
            {
                yield return new($"{method.DeclaringType!.Name}.{method.Name}", () =>
                {
                    method.Invoke(Activator.CreateInstance(method.DeclaringType), Fitting(method, arguments));
                    return "";
                });
            }
        }
    }

    private static object?[] Fitting(MethodInfo method, object?[] arguments) =>
        [.. method.GetParameters().Zip(arguments,
            (parameter, value) => parameter.ParameterType.IsEnum ? Enum.ToObject(parameter.ParameterType, value!) : value)];

    /// <summary>
    /// Loads whatever stands in a folder from there, so that the changed library is not mixed up with this program's own.
    /// </summary>
    private sealed class FromFolder(string folder) : AssemblyLoadContext("mutants")
    {
        protected override Assembly? Load(AssemblyName name) =>
            Path.Combine(folder, $"{name.Name}.dll") is var path && File.Exists(path) ? LoadFromAssemblyPath(path) : null;
    }
}
