package evenrise.solver.rendering;

import evenrise.model.file.Json;
import evenrise.model.plan.Cautions;
import evenrise.model.readings.SavedReadings;
import evenrise.solver.document.Imprint;
import evenrise.solver.document.SiteForm;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** The commissioning sheet as a page of its own: filled in at the panel, without a network, and handed back as a file. */
public final class CommissioningPage {
    private static final List<String> SCRIPT = List.of("form", "judge", "keep", "visits", "cards", "handback", "begin");

    private CommissioningPage() {}

    public static String of(Imprint imprint, SiteForm form) {
        String style = Templates.text("site.css");
        String script = SCRIPT.stream()
                .map(part -> Templates.text("site/" + part + ".js"))
                .collect(Collectors.joining("\n", "\"use strict\";\n(function () {\n", "})();\n"));
        Map<String, Object> values = new HashMap<>();
        values.put("imprint", imprint);
        values.put("places", form.places());
        values.put("cautions", Cautions.ALL);
        values.put("format", SavedReadings.FORMAT);
        values.put("json", Json.compact(form).replace("<", "\\u003c"));
        values.put("planSha256", form.planSha256());
        values.put("style", style);
        values.put("styleHash", Policy.hash(style));
        values.put("script", script);
        values.put("scriptHash", Policy.hash(script));
        return Templates.fill("site.peb", values);
    }
}
