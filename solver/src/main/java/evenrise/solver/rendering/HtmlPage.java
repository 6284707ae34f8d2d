package evenrise.solver.rendering;

import evenrise.model.contract.Harmless;
import evenrise.solver.document.Document;
import evenrise.solver.document.Imprint;
import evenrise.solver.document.PlayedLoad;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/** One self-contained page: nothing is loaded from elsewhere, and only its own script may run. */
public final class HtmlPage {
    private static final List<String> SCRIPT = List.of(
            "loads", "panels", "moment", "axis", "traces", "curves", "lanes", "strip", "player", "pick", "seats",
            "filter", "tables", "tryout", "keys", "begin");

    private static final int MOST_FINDINGS = 200;
    private static final int MOST_SCHEDULES_AT_ONCE = 24;

    private static final int MOST_DRAWN_SHEETS = 24;

    /** More would take a browser too long, and too much room in the page. */
    private static final int MOST_TRIED = 2000;

    /** One sheet of a drawing. */
    public record DrawnSheet(String title, String note, String svg) {}

    private HtmlPage() {}

    public static String of(Document document) {
        Set<String> played = document.loads().stream().map(PlayedLoad::id).collect(Collectors.toSet());
        Lanes lanes = Lanes.of(document);
        String style = Templates.text("page.css") + onEverySheet(document);
        String script = script();
        Map<String, Object> values = new HashMap<>();
        values.put("document", document);
        values.put("first", document.overview());
        values.put(
                "tables",
                document.tables().all().stream()
                        .map(table -> PageTable.of(table, played))
                        .toList());
        values.put("findings", document.findings().stream().limit(MOST_FINDINGS).toList());
        values.put("moreFindings", Math.max(0, document.findings().size() - MOST_FINDINGS));
        values.put("longSchedules", document.schedules().size() > MOST_SCHEDULES_AT_ONCE);
        values.put("drawings", drawings(document));
        values.put("slopes", SlopeSvg.of(document.revised().slopes()));
        values.put("curve", CurveSvg.of(document));
        values.put("lanes", lanes);
        values.put("startedSystem", Played.started(document));
        values.put("groups", groups(document));
        values.put("json", Played.of(document, lanes).json());
        boolean canTry = document.loads().size() <= MOST_TRIED;
        String referee = canTry ? referee() : "";
        values.put("mostTried", MOST_TRIED);
        values.put("handout", canTry ? document.handout().text() : "");
        values.put("referee", referee);
        values.put("refereeHash", Policy.hash(referee));
        values.put("style", style);
        values.put("styleHash", Policy.hash(style));
        values.put("script", script);
        values.put("scriptHash", Policy.hash(script));
        return Templates.fill("page.peb", values);
    }

    /** Its parts in one function of their own, so that they see each other and nobody else does. */
    private static String script() {
        return SCRIPT.stream()
                .map(part -> Templates.text("page/" + part + ".js"))
                .collect(Collectors.joining("\n", "\"use strict\";\n(function () {\n", "})();\n"));
    }

    /** The build compiles it from the classes of the referee. */
    private static String referee() {
        return "globalThis.evenriseReferee={};(function(exports){" + Templates.text("referee.js")
                + "})(globalThis.evenriseReferee);";
    }

    /** Sheet by sheet; of great plants in print and for other programs only. */
    private static List<DrawnSheet> drawings(Document document) {
        List<DrawnSheet> sheets = DrawnDiagram.all(document).stream()
                .flatMap(drawn -> drawn.sheets().stream()
                        .map(sheet -> new DrawnSheet(
                                drawn.title(sheet), drawn.diagram().note(), SheetSvg.of(drawn, sheet))))
                .toList();
        return sheets.size() > MOST_DRAWN_SHEETS ? List.of() : sheets;
    }

    private static List<String> groups(Document document) {
        return List.copyOf(new TreeSet<>(document.loads().stream()
                .map(PlayedLoad::group)
                .filter(group -> !group.isEmpty())
                .toList()));
    }

    private static String onEverySheet(Document document) {
        Imprint imprint = document.imprint();
        String left = imprint.project() + " · revision " + imprint.revision() + " · " + imprint.date()
                + " · project file " + imprint.shortHash() + " · evenrise " + imprint.version();
        return "@page{@top-left{content:" + Harmless.css(document.headline()) + "}@bottom-left{content:"
                + Harmless.css(left) + "}@bottom-right{content:\"page \" counter(page) \" of \" counter(pages)}}";
    }
}
