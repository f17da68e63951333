using Spectre.Console.Cli;
using SplitBatch.Cli;

if (KernelStartCommand.TryStart(args))
{
    Environment.Exit(0); // A cell may still be running, on a thread of its own.
}

var app = new CommandApp();
app.Configure(config =>
{
    config.SetApplicationName("splitbatch");
    config.AddKernel();
});
return await app.RunAsync(args);
