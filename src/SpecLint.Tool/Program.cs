using SpecLint.Tool;

// A pattern in a schema of the house can be written so that it searches for years; no pattern of our own comes near this.
AppDomain.CurrentDomain.SetData("REGEX_DEFAULT_MATCH_TIMEOUT", TimeSpan.FromSeconds(4));
return Shell.Run(args, Host.OfProcess());
