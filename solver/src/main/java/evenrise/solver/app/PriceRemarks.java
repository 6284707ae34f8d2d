package evenrise.solver.app;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What stands with the prices of many projects: each sentence once, with those that it is about where these are not all. */
final class PriceRemarks {
    private static final int MOST_NAMED = 4;

    private PriceRemarks() {}

    static List<String> of(List<PlannedVariant> variants) {
        List<PlannedVariant> priced =
                variants.stream().filter(each -> each.price().isPresent()).toList();
        Map<String, List<String>> about = new LinkedHashMap<>();
        for (PlannedVariant each : priced) {
            each.basis()
                    .forEach(sentence -> about.computeIfAbsent(sentence, any -> new ArrayList<>())
                            .add(each.project() + ", " + each.variant().name()));
        }
        List<String> remarks = new ArrayList<>();
        about.forEach((sentence, names) -> remarks.add((names.size() == priced.size() ? "" : named(names)) + sentence));
        return remarks;
    }

    private static String named(List<String> names) {
        int more = names.size() - MOST_NAMED;
        return String.join("; ", names.subList(0, Math.min(MOST_NAMED, names.size())))
                + (more > 0 ? "; and " + more + " more" : "") + ": ";
    }
}
