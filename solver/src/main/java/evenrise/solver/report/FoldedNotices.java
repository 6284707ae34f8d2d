package evenrise.solver.report;

import evenrise.model.plan.Finding;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Remarks about rows of a list that differ in nothing but names and figures, as one. */
final class FoldedNotices {
    /** So many stand by themselves. */
    private static final int FEWEST = 3;

    private static final int MOST_PLACES = 8;
    private static final Pattern NAMES_AND_FIGURES = Pattern.compile("'[^']*'|[0-9][0-9.,]*");

    private FoldedNotices() {}

    /** In the order of the first of each. */
    static List<String> of(List<? extends Finding> findings) {
        Map<String, List<Finding>> alike = new LinkedHashMap<>();
        findings.forEach(each ->
                alike.computeIfAbsent(key(each), any -> new ArrayList<>()).add(each));
        return alike.values().stream()
                .flatMap(each -> each.size() < FEWEST
                        ? each.stream().map(Finding::message).distinct()
                        : List.of(folded(each)).stream())
                .toList();
    }

    private static String key(Finding finding) {
        boolean isOfRow = !finding.place().isEmpty();
        return isOfRow ? NAMES_AND_FIGURES.matcher(text(finding)).replaceAll("·") : finding.message();
    }

    private static String folded(List<Finding> alike) {
        List<String> places = alike.stream().map(Finding::place).distinct().toList();
        String text = text(alike.get(0));
        boolean isEqual = alike.stream().allMatch(each -> text(each).equals(text));
        if (places.size() == 1 && isEqual) {
            return alike.get(0).message();
        }
        return alike.size() + " × " + places.stream().limit(MOST_PLACES).collect(Collectors.joining("; "))
                + (places.size() > MOST_PLACES ? " and " + (places.size() - MOST_PLACES) + " more places" : "")
                + (isEqual ? ": " : ". The first: ") + text;
    }

    private static String text(Finding finding) {
        String place = finding.place() + ": ";
        return finding.message().startsWith(place) ? finding.message().substring(place.length()) : finding.message();
    }
}
