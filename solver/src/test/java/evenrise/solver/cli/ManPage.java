package evenrise.solver.cli;

import evenrise.solver.app.Jobs;
import java.util.Map;
import picocli.AutoComplete;
import picocli.CommandLine;
import picocli.CommandLine.Help;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;

/** The manual page and the completion, from what the commands say of themselves. */
public final class ManPage {
    private ManPage() {}

    public static String completion() {
        return AutoComplete.bash("evenrise", commands());
    }

    /** In the language of man(7). */
    public static String text() {
        CommandLine root = commands();
        StringBuilder page = new StringBuilder(".TH EVENRISE 1 \"\" \"evenrise\" \"User Commands\"\n.SH NAME\n");
        page.append("evenrise \\- lays out switched, sequenced power for large audio\\-visual systems\n");
        page.append(".SH SYNOPSIS\n.B evenrise\n.I COMMAND\n[\\fIOPTIONS\\fR]\n");
        section(page, "DESCRIPTION", root.getCommandSpec());
        for (Map.Entry<String, CommandLine> each : root.getSubcommands().entrySet()) {
            CommandSpec command = each.getValue().getCommandSpec();
            if (!command.usageMessage().hidden()) {
                section(page, "EVENRISE " + each.getKey().toUpperCase(java.util.Locale.ROOT), command);
            }
        }
        return page.toString();
    }

    private static void section(StringBuilder page, String title, CommandSpec command) {
        page.append(".SH \"").append(escaped(title)).append("\"\n");
        paragraphs(page, command.usageMessage().header());
        paragraphs(page, command.usageMessage().description());
        page.append(".PP\n.nf\n")
                .append(escaped(plain(new Help(command).synopsis(0))))
                .append(".fi\n");
        for (PositionalParamSpec each : command.positionalParameters()) {
            item(page, each.paramLabel(), each.description());
        }
        for (OptionSpec each : command.options()) {
            if (!each.hidden()) {
                String value = each.arity().max() == 0 ? "" : " " + each.paramLabel();
                item(page, String.join(", ", each.names()) + value, each.description());
            }
        }
        paragraphs(page, command.usageMessage().footer());
    }

    private static void item(StringBuilder page, String term, String[] description) {
        page.append(".TP\n.B ").append(escaped(term)).append('\n');
        for (String line : description) {
            page.append(escaped(formatted(line))).append('\n');
        }
    }

    private static void paragraphs(StringBuilder page, String[] lines) {
        for (String line : lines) {
            String text = formatted(line).stripLeading();
            if (!text.isBlank()) {
                page.append(".PP\n").append(escaped(text)).append('\n');
            }
        }
    }

    /** picocli's texts hold %n for a new line and %% for a percent sign. */
    private static String formatted(String line) {
        return plain(line.replace("%n", "\n").replace("%%", "%")).strip();
    }

    private static String plain(String text) {
        return Help.Ansi.OFF.string(text);
    }

    private static String escaped(String text) {
        String safe = text.replace("\\", "\\e").replace("-", "\\-");
        return safe.lines()
                        .map(line -> line.startsWith(".") || line.startsWith("'") ? "\\&" + line : line)
                        .reduce((a, b) -> a + "\n" + b)
                        .orElse("")
                + (text.endsWith("\n") ? "\n" : "");
    }

    private static CommandLine commands() {
        return Evenrise.commandLine(Terminal.ofProcess(), new Jobs(), new Interruption());
    }
}
