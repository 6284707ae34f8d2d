package evenrise.model.file;

import com.fasterxml.classmate.ResolvedType;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.github.victools.jsonschema.generator.CustomDefinition;
import com.github.victools.jsonschema.generator.CustomDefinitionProviderV2;
import com.github.victools.jsonschema.generator.FieldScope;
import com.github.victools.jsonschema.generator.MemberScope;
import com.github.victools.jsonschema.generator.Option;
import com.github.victools.jsonschema.generator.OptionPreset;
import com.github.victools.jsonschema.generator.SchemaGenerationContext;
import com.github.victools.jsonschema.generator.SchemaGeneratorConfigBuilder;
import com.github.victools.jsonschema.generator.SchemaGeneratorConfigPart;
import com.github.victools.jsonschema.generator.SchemaVersion;
import evenrise.model.contract.BareList;
import evenrise.model.contract.Field;
import evenrise.model.contract.Words;
import evenrise.model.project.GivenFields;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/** How records become JSON Schema: what a component may be is said by its type and by its {@link Field}. */
final class SchemaRules {
    private record Unsaid(@Field(meaning = "") Object any) {}

    /** Stands for the annotation of a component that has none. */
    private static final Field UNSAID = Unsaid.class.getRecordComponents()[0].getAnnotation(Field.class);

    private static final ObjectMapper MAPPER = new ObjectMapper();

    private final boolean isSheet;

    /** @param isSheet whether every component is written, an empty one as null; else what is absent is left out */
    SchemaRules(boolean isSheet) {
        this.isSheet = isSheet;
    }

    /** @param format what the component {@code format} may say */
    SchemaGeneratorConfigBuilder config(String format) {
        SchemaGeneratorConfigBuilder config = new SchemaGeneratorConfigBuilder(
                        SchemaVersion.DRAFT_2020_12, OptionPreset.PLAIN_JSON)
                .with(Option.DEFINITIONS_FOR_ALL_OBJECTS, Option.FORBIDDEN_ADDITIONAL_PROPERTIES_BY_DEFAULT);
        if (isSheet) {
            config.with(Option.MAP_VALUES_AS_ADDITIONAL_PROPERTIES);
        } else {
            config.forTypesInGeneral().withCustomDefinitionProvider(new ObjectOrList());
        }
        config.forTypesInGeneral()
                .withCustomDefinitionProvider((type, context) -> type.getErasedType() == GivenFields.class
                        ? new CustomDefinition(MAPPER.createObjectNode().put("$ref", GivenSchema.PLACE), true)
                        : null);
        config.forTypesInGeneral().withCustomDefinitionProvider((type, context) -> {
            if (!type.getErasedType().isEnum()) {
                return null;
            }
            ObjectNode words = MAPPER.createObjectNode().put("type", "string");
            Expected.words(type.getErasedType()).forEach(words.putArray("enum")::add);
            return new CustomDefinition(words);
        });
        config.forTypesInGeneral().withPropertySorter(Comparator.comparingInt(SchemaRules::position));
        SchemaGeneratorConfigPart<FieldScope> fields = config.forFields();
        fields.withPropertyNameOverrideResolver(scope -> Words.key(scope.getDeclaredName()));
        fields.withTargetTypeOverridesResolver(SchemaRules::withoutOptional);
        fields.withDescriptionResolver(
                scope -> scope.isFakeContainerItemScope() || of(scope).meaning().isEmpty()
                        ? null
                        : of(scope).meaning());
        fields.withRequiredCheck(scope ->
                isSheet || !of(scope).optional() && of(scope).byDefault().isEmpty());
        fields.withNullableCheck(scope -> !scope.isFakeContainerItemScope()
                && (isSheet ? isOptional(scope) : of(scope).optional()));
        fields.withDefaultResolver(scope -> isSheet
                        || scope.isFakeContainerItemScope()
                        || of(scope).byDefault().isEmpty()
                ? null
                : parsed(of(scope).byDefault()));
        fields.withNumberInclusiveMinimumResolver(scope -> bound(scope, Field::min));
        fields.withNumberExclusiveMinimumResolver(scope -> bound(scope, Field::above));
        fields.withNumberInclusiveMaximumResolver(scope -> bound(scope, Field::max));
        fields.withStringMinLengthResolver(scope -> fewest(scope, String.class));
        fields.withStringPatternResolver(scope -> fewest(scope, String.class) == null ? null : "\\S");
        fields.withArrayMinItemsResolver(scope -> fewest(scope, List.class));
        fields.withArrayUniqueItemsResolver(
                scope -> !scope.isFakeContainerItemScope() && of(scope).distinct() ? true : null);
        fields.withEnumResolver(scope -> scope.getDeclaredName().equals("format") ? List.of(format) : null);
        return config;
    }

    /** Records that a bare list may stand for. */
    private static final class ObjectOrList implements CustomDefinitionProviderV2 {
        @Override
        public CustomDefinition provideCustomSchemaDefinition(ResolvedType type, SchemaGenerationContext context) {
            BareList bare = type.getErasedType().getAnnotation(BareList.class);
            if (bare == null) {
                return null;
            }
            ObjectNode object = context.createStandardDefinition(type, this);
            JsonNode list = ((ObjectNode) object.get("properties")).remove(Words.key(bare.value()));
            ((ObjectNode) list).put("type", "array");
            ObjectNode either = MAPPER.createObjectNode();
            either.putArray("anyOf").add(list).add(object);
            // Nothing beside the two: forbidding further properties there would forbid those of the object.
            return new CustomDefinition(
                    either, CustomDefinition.DefinitionType.STANDARD, CustomDefinition.AttributeInclusion.NO);
        }
    }

    /** Optional and its kin say only that a field may be absent. */
    private static List<ResolvedType> withoutOptional(FieldScope scope) {
        Type declared = component(scope).getGenericType();
        Type inner = RecordShape.withoutOptional(declared);
        return scope.isFakeContainerItemScope() || inner == declared
                ? null
                : List.of(scope.getContext().resolve(inner));
    }

    private static boolean isOptional(FieldScope scope) {
        Type declared = component(scope).getGenericType();
        return RecordShape.withoutOptional(declared) != declared;
    }

    private static Field of(FieldScope scope) {
        return Optional.ofNullable(component(scope).getAnnotation(Field.class)).orElse(UNSAID);
    }

    private static RecordComponent component(FieldScope scope) {
        return scope.getRawMember().getDeclaringClass().getRecordComponents()[position(scope)];
    }

    /** Place of a component in its record. */
    private static int position(MemberScope<?, ?> scope) {
        return Arrays.stream(scope.getRawMember().getDeclaringClass().getRecordComponents())
                .map(RecordComponent::getName)
                .toList()
                .indexOf(scope.getRawMember().getName());
    }

    private static BigDecimal bound(FieldScope scope, ToDoubleFunction<Field> of) {
        double bound = of.applyAsDouble(of(scope));
        Class<?> type = scope.getType().getErasedType();
        boolean number = Number.class.isAssignableFrom(type) || type.isPrimitive() && type != boolean.class;
        return number && Double.isFinite(bound) ? new BigDecimal(ShortestNumber.of(bound)) : null;
    }

    private Integer fewest(FieldScope scope, Class<?> type) {
        boolean mayBeEmpty = isSheet && of(scope).optional();
        boolean applies = !scope.isFakeContainerItemScope()
                && !mayBeEmpty
                && type.isAssignableFrom(scope.getType().getErasedType());
        return applies ? Optional.of(of(scope).atLeast()).filter(it -> it > 0).orElse(null) : null;
    }

    private static JsonNode parsed(String json) {
        try {
            return MAPPER.readTree(json);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException(e);
        }
    }
}
