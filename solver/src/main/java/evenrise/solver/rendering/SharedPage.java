package evenrise.solver.rendering;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Several filled-in templates as one: below each other, each in its own style. */
final class SharedPage {
    /** Where a template's own style begins, behind that of all. */
    private static final String OWN = "/*own*/";

    private static final String STYLE_END = "</style></head><body>";
    private static final String END = "</body></html>";
    private static final Pattern RULE = Pattern.compile("([^{}]+)\\{([^{}]*)}");

    private SharedPage() {}

    /** @param pages at least one, with the same margins */
    static String of(List<String> pages) {
        StringBuilder style = new StringBuilder();
        StringBuilder body = new StringBuilder();
        for (int i = 0; i < pages.size(); i++) {
            String page = pages.get(i);
            style.append(within(".on" + i, page.substring(own(page), page.indexOf(STYLE_END))));
            body.append("<div class=\"on")
                    .append(i)
                    .append(i > 0 ? " below" : "")
                    .append("\">");
            body.append(page, page.indexOf(STYLE_END) + STYLE_END.length(), page.lastIndexOf(END));
            body.append("</div>");
        }
        String first = pages.get(0);
        return first.substring(0, own(first)) + ".below{margin-top:8mm}" + style + STYLE_END + body + END;
    }

    private static int own(String page) {
        return page.lastIndexOf(OWN, page.indexOf(STYLE_END)) + OWN.length();
    }

    /** The rules of a style sheet, for what stands inside of one element only. */
    static String within(String element, String style) {
        return RULE.matcher(style)
                .replaceAll(rule ->
                        Matcher.quoteReplacement(List.of(rule.group(1).split(",")).stream()
                                        .map(selector -> element + " " + selector.strip())
                                        .collect(Collectors.joining(","))
                                + "{" + rule.group(2) + "}"));
    }
}
