package rosinbook.testing;

import com.microsoft.playwright.Page;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Properties;

/** What axe-core finds on a page for people who hear it, magnify it or work it by keyboard. */
public final class Axe {
    private static final String SCRIPT = script();
    private static final String SERIOUS =
            """
            async (rules) => {
              // What axe-core preloads it would write into the page as styles, which the pages' policy refuses.
              const options = { preload: false, ...(rules.length ? { runOnly: { type: 'rule', values: rules } } : {}) };
              const { violations, passes } = await axe.run(document, { resultTypes: ['violations', 'passes'], ...options });
              if (passes.length + violations.length === 0) throw new Error('axe-core has looked at nothing');
              return violations
                .filter(({ impact }) => impact === 'serious' || impact === 'critical')
                .flatMap(({ id, impact, nodes }) => nodes.map(({ html, any }) =>
                  `${impact} ${id}: ${html.slice(0, 160)} ${any.map(({ message }) => message).join('; ')}`));
            }""";

    private Axe() {}

    /**
     * Whatever is serious or critical.
     *
     * @param rules the rules to look at; none for all
     */
    @SuppressWarnings("unchecked")
    public static List<String> serious(Page page, String... rules) {
        // Evaluated rather than added: the pages' policy allows no script but the notebook's own.
        if (Boolean.FALSE.equals(page.evaluate("typeof axe !== 'undefined'"))) {
            page.evaluate(SCRIPT);
        }
        return (List<String>) page.evaluate(SERIOUS, List.of(rules));
    }

    private static String script() {
        try {
            Properties pom = new Properties();
            try (InputStream file =
                    Axe.class.getResourceAsStream("/META-INF/maven/org.webjars.npm/axe-core/pom.properties")) {
                pom.load(file);
            }
            String path = "/META-INF/resources/webjars/axe-core/" + pom.getProperty("version") + "/axe.min.js";
            try (InputStream file = Axe.class.getResourceAsStream(path)) {
                return new String(file.readAllBytes(), StandardCharsets.UTF_8);
            }
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }
}
