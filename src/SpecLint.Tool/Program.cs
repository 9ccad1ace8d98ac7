using SpecLint.Tool;

return Shell.Run(args, Host.OfProcess());
