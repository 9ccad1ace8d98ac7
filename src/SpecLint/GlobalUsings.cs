global using SpecLint.Vocabulary;
