package evenrise.solver.desk;

import evenrise.model.file.Schemas;
import evenrise.solver.app.Jobs;
import java.util.LinkedHashMap;
import java.util.Map;

/** Describes what can be asked of the desk, for programs (OpenAPI 3.1), from the table that answers it. */
final class Interface {
    private Interface() {}

    static String text(DeskRoutes routes) {
        Map<String, String> schemas = new LinkedHashMap<>();
        StringBuilder paths = new StringBuilder();
        for (DeskRoutes.Route<?, ?> route : routes.all().values()) {
            schemas.put(name(route.answered()), Schemas.part(route.answered(), true));
            if (route.isChange()) {
                schemas.put(name(route.asked()), Schemas.part(route.asked(), false));
            }
            paths.append(paths.length() == 0 ? "" : ",\n")
                    .append("    \"")
                    .append(route.path())
                    .append("\": {\"")
                    .append(route.isChange() ? "post" : "get")
                    .append("\": {\"summary\": \"")
                    .append(route.meaning())
                    .append("\",")
                    .append(
                            route.isChange()
                                    ? " \"requestBody\": {\"required\": true, " + content(route.asked()) + "},"
                                    : "")
                    .append(" \"responses\": {\"200\": {\"description\": \"done\", ")
                    .append(content(route.answered()))
                    .append("}, \"422\": {\"description\": \"not done, and why\", ")
                    .append(content(DeskAnswers.Refusal.class))
                    .append("}}}}");
        }
        schemas.put(name(DeskAnswers.Refusal.class), Schemas.part(DeskAnswers.Refusal.class, true));
        StringBuilder parts = new StringBuilder();
        schemas.forEach((name, schema) -> parts.append(parts.length() == 0 ? "" : ",\n")
                .append("    \"")
                .append(name)
                .append("\": ")
                .append(schema));
        return "{\"openapi\": \"3.1.0\",\n \"info\": {\"title\": \"evenrise desk\", \"version\": \"" + Jobs.version()
                + "\"},\n \"paths\": {\n" + paths + "},\n \"components\": {\"schemas\": {\n" + parts + "}}}\n";
    }

    private static String content(Class<?> type) {
        return "\"content\": {\"application/json\": {\"schema\": {\"$ref\": \"#/components/schemas/" + name(type)
                + "\"}}}";
    }

    private static String name(Class<?> type) {
        return type.getSimpleName();
    }
}
