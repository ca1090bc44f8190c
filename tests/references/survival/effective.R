# Reference values for limits from a variance alone (Korn and Graubard's, with t for the effective number): random shares,
# variances and numbers of animals, seed 7, by R's own qt and qbeta. Run by hand:
#   Rscript tests/references/survival/effective.R
# The same sum as method "beta" of svyciprop in R's survey package, whose t stands for degrees of freedom of a survey.
suppressMessages(library(jsonlite))
here <- dirname(sub("--file=", "", grep("--file=", commandArgs(), value = TRUE)))
set.seed(7)
cases <- lapply(1:60, function(i) {
  animals <- sample(c(4, 10, 25, 80, 400), 1); share <- runif(1, .02, .98); confidence <- sample(c(.8, .9, .95, .99), 1)
  variance <- share * (1 - share) / animals * exp(runif(1, -.5, 1.5))
  worth <- min(share * (1 - share) / variance, animals); alpha <- 1 - confidence
  n <- worth * (qnorm(alpha / 2) / qt(alpha / 2, max(worth - 1, 1)))^2
  list(share = share, variance = variance, animals = animals, confidence = confidence,
       low = qbeta(alpha / 2, n * share, n * (1 - share) + 1), high = qbeta(1 - alpha / 2, n * share + 1, n * (1 - share)))
})
write(toJSON(cases, digits = I(16), auto_unbox = TRUE), file.path(here, "effective.json"))
